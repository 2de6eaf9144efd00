/** The background between the helper of a page and its copies in frames of other origins. */
import browser, { type Runtime } from 'webextension-polyfill'
import { addressOf } from '../form/map/address.ts'
import { writtenSchema } from '../form/page/image.ts'
import type { Answer } from '../messages/answers.ts'
import { fromFramesSchema, type ToHelper } from '../messages/messages.ts'
import { say } from '../words/say.ts'

const lookInto = (tab: number) =>
  browser.scripting.executeScript({ target: { tabId: tab, allFrames: true }, files: ['/frame.js'] })

/**
 * Under this key stands the tab that asked for a frame, so that the frame joins in as soon as it is allowed. Not in
 * memory: whoever reads for half a minute before allowing finds the background put to sleep.
 */
const asking = 'asking for a frame'

/** Takes a message about frames; undefined for any other. `show` opens the place where the person allows an origin. */
export function relay(
  raw: unknown,
  sender: Runtime.MessageSender,
  show: (origin: string) => Promise<void>,
): Promise<Answer> | undefined {
  const checked = fromFramesSchema.safeParse(raw)
  if (!checked.success) return undefined
  return pass(checked.data, sender, show).catch((error: unknown): Answer => {
    return {
      ok: false,
      message: say`The frame did not answer: ${error instanceof Error ? error.message : String(error)}`,
    }
  })
}

async function pass(
  message: ReturnType<typeof fromFramesSchema.parse>,
  sender: Runtime.MessageSender,
  show: (origin: string) => Promise<void>,
): Promise<Answer> {
  const tab = sender.tab?.id
  if (sender.id !== browser.runtime.id || tab === undefined)
    return { ok: false, message: say`Only the helper is heard.` }
  if (message.type === 'frame') {
    const frame = sender.frameId ?? 0
    // Where the frame is from, the browser says; the frame itself is not asked.
    if (frame === 0 || !sender.url) return { ok: false, message: say`A page is no frame.` }
    const up: ToHelper = { type: 'frame', frame, address: addressOf(sender.url), images: message.images }
    await browser.tabs.sendMessage(tab, up, { frameId: 0 })
    return { ok: true }
  }
  if (message.type === 'frame-pick') {
    const picked: ToHelper = { type: 'picked', frame: sender.frameId ?? 0, key: message.key }
    await browser.tabs.sendMessage(tab, picked, { frameId: 0 })
    return { ok: true }
  }
  if (sender.frameId !== 0) return { ok: false, message: say`Only the page itself asks its frames.` }
  switch (message.type) {
    case 'frames-look':
      await lookInto(tab)
      return { ok: true }
    case 'frames-end': {
      const end: ToHelper = { type: 'end' }
      await browser.tabs.sendMessage(tab, end)
      return { ok: true }
    }
    case 'frame-write': {
      const down: ToHelper = { type: 'write', key: message.key, text: message.text }
      const answer: unknown = await browser.tabs.sendMessage(tab, down, { frameId: message.frame })
      return { ok: true, written: writtenSchema.parse(answer) }
    }
    case 'frame-marks': {
      const down: ToHelper = { type: 'marks', pick: message.pick, marks: message.marks }
      await browser.tabs.sendMessage(tab, down, { frameId: message.frame })
      return { ok: true }
    }
    case 'ask-frame':
      await browser.storage.session.set({ [asking]: tab })
      await show(message.origin)
      return { ok: true }
  }
}

async function join(): Promise<void> {
  const tab = (await browser.storage.session.get(asking))[asking]
  if (typeof tab === 'number') await lookInto(tab)
}

/** Lets the frames of the tab that asked join in when the person has allowed their origin. */
export function joinAllowed(): void {
  // The tab may be gone by now, or have another page: then the next action looks again.
  browser.permissions.onAdded.addListener(() => void join().catch(() => {}))
}
