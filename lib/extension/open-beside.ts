import { browser } from '../browser.ts'

interface Beside {
  /** Chromium */
  sidePanel?: { open: (options: { windowId: number }) => Promise<void> }
  /** Firefox */
  sidebarAction?: { open: () => Promise<void> }
}

/** The window in which a call is made. */
const thisWindow = -2

/** Opens the sidebar. The browser lets it only while it answers a press or a shortcut, so nothing is waited for first. */
export async function openBeside(windowId: number = thisWindow): Promise<void> {
  const { sidePanel, sidebarAction } = browser as typeof browser & Beside
  await (sidePanel ? sidePanel.open({ windowId }) : sidebarAction?.open())
}
