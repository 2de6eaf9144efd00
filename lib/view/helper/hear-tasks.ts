/** Pages of the extension that are filled like any page: no script can be put into them, so they have the helper from the start. */
import { browser } from '../../browser.ts'
import { channelName, type FromPractice, type ToPractice } from '../../extension/practice.ts'
import { offerExtra } from '../../form/kinds/write-extra.ts'
import { toHelperSchema, type ToHelper } from '../../messages/messages.ts'
import { mapPart } from './map-part.ts'
import css from './marks.css?inline'
import { planPart } from './plan-part.ts'
import { stage } from './stage.ts'

/** @param refuse why a task cannot be shown now; empty when it can */
export function hearTasks(refuse: (task: Extract<ToHelper, { type: 'map' | 'plan' }>) => string = () => ''): void {
  offerExtra()
  const show = stage(css, new AbortController().signal, { plan: planPart, map: mapPart })
  const channel = new BroadcastChannel(channelName)
  channel.addEventListener('message', async ({ data }: MessageEvent<ToPractice | FromPractice>) => {
    const here = (await browser.tabs.getCurrent())?.id
    if (!('task' in data) || here === undefined || data.tab !== here) return
    const task = toHelperSchema.parse(data.task)
    let refusal = ''
    if (task.type === 'map' || task.type === 'plan') {
      refusal = refuse(task)
      const shown = refusal ? undefined : show(task)
      if (shown && !shown.shown) refusal = shown.message
    }
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
    channel.postMessage({ from: here, refusal } satisfies FromPractice)
  })
}
