/** A job on its way into a form: its figures and fields, and the reports that the form map asks for. */
import { browser } from '../browser.ts'
import type { FormMap } from '../form/schema.ts'
import { material, withReadings } from '../job/material.ts'
import type { Device, Job } from '../job/schema.ts'
import type { ActivePage } from './page.ts'
import { sendHelper } from './send-helper.ts'

/** Keys of the reports that go into a form by this map. */
export function reportsIn({ bindings }: Pick<FormMap, 'bindings'>): ReadonlySet<string> {
  return new Set(
    bindings.flatMap(({ source }) => (source.from === 'file' && source.item !== undefined ? [source.item] : [])),
  )
}

/** Runs in the page. */
const hasFileControl = (): boolean => document.querySelector('input[type=file]') !== null

/** Whether the page shows a control for files; what stands in shadow roots is not looked for. */
async function takesFiles(tab: number): Promise<boolean> {
  // A page that lets nothing in says so when the helper is put there.
  const found = await browser.scripting
    .executeScript({ target: { tabId: tab, allFrames: true }, func: hasFileControl })
    .catch(() => [])
  return found.some(({ result }) => result === true)
}

/**
 * Shows the plan of a form map on the page, or opens mapping there.
 * @throws Error that says what the person can do, when the page cannot be reached or a report cannot be made.
 */
export async function sendJob(
  type: 'plan' | 'map',
  page: Pick<ActivePage, 'tab' | 'url'>,
  { job, devices, map, beside }: { job: Job; devices: readonly Device[]; map: FormMap | undefined; beside: boolean },
): Promise<void> {
  const plain = withReadings(material(job, [...devices]), job, devices)
  const bound = map ? reportsIn(map) : new Set<string>()
  // While a page is mapped any of them may be chosen, and its plan is shown from there.
  const wanted = type === 'map' && (await takesFiles(page.tab)) ? new Set(Object.keys(plain.files ?? {})) : bound
  const filled =
    wanted.size > 0 ? await (await import('../report/report-files.ts')).withReports(plain, job, devices, wanted) : plain
  if (type === 'map') {
    const { withEmpty } = await import('../job/material-empty.ts')
    const all = withEmpty(filled, job, [...devices])
    return sendHelper(page, { type, material: all, ...(map && { map }) }, beside)
  }
  if (map) await sendHelper(page, { type, material: filled, map }, beside)
}
