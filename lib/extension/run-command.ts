/** What the browser's shortcuts do. A shortcut counts as a press on the button: the page in front may be worked on. */
import type { Tabs } from 'webextension-polyfill'
import { getJob } from '../book/jobs.ts'
import { listMaps } from '../book/maps.ts'
import { listDevices } from '../book/devices.ts'
import { getSettings } from '../book/settings.ts'
import { browser } from '../browser.ts'
import { serves } from '../form/map/address.ts'
import { material, withReadings } from '../job/material.ts'
import { openBeside } from './open-beside.ts'
import { sendHelper } from './send-helper.ts'

type Tab = Pick<Tabs.Tab, 'id' | 'url' | 'windowId'>

/** Runs a command of the manifest on the tab in front. */
export async function runCommand(command: string, tab: Tab | undefined): Promise<void> {
  // Asked for at once: the browser opens a sidebar only while it answers the key.
  if (command === 'beside') return openBeside(tab?.windowId)
  if (command === 'fill' && !(await showPlan(tab).catch(() => false))) {
    // The calculator says what is missing, or lets the person choose.
    await browser.action.openPopup()
  }
}

/** Shows the plan of the only form map of the page for the job in hand; false when there is not just one, or no job. */
async function showPlan(tab: Tab | undefined): Promise<boolean> {
  const front = tab ?? (await browser.tabs.query({ active: true, currentWindow: true }))[0]
  const url = front?.url ?? ''
  if (front?.id === undefined || url === '') return false
  const [{ current }, maps, devices] = await Promise.all([getSettings(), listMaps(), listDevices()])
  const job = current.job ? await getJob(current.job) : undefined
  const [map, ...others] = maps.filter((one) => serves(one, url))
  if (!job || !map || others.length > 0) return false
  // Reports are made by the calculator: what writes them would weigh on every start of the background.
  if (map.bindings.some(({ source }) => source.from === 'file' && source.item !== undefined)) return false
  await sendHelper(
    { tab: front.id, url },
    { type: 'plan', material: withReadings(material(job, devices), job, devices), map },
  )
  return true
}
