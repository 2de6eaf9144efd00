import { render } from 'preact'
import { browser } from '../../lib/browser.ts'
import { offerExtra } from '../../lib/form/kinds/write-extra.ts'
import { toHelperSchema } from '../../lib/messages/messages.ts'
import { mapPart } from '../../lib/view/helper/map-part.ts'
import css from '../../lib/view/helper/marks.css?inline'
import { planPart } from '../../lib/view/helper/plan-part.ts'
import { stage } from '../../lib/view/helper/stage.ts'
import { channelName, type FromPractice, type ToPractice } from '../../lib/extension/practice.ts'
import '../../lib/view/practice/practice.css'
import { PracticeForm } from '../../lib/view/practice/practice-form.tsx'

offerExtra()
render(<PracticeForm />, document.getElementById('root')!)

// No script can be put into a page of the extension, so this one has the helper from the start.
const show = stage(css, new AbortController().signal, { plan: planPart, map: mapPart })
const channel = new BroadcastChannel(channelName)
channel.addEventListener('message', async ({ data }: MessageEvent<ToPractice | FromPractice>) => {
  const here = (await browser.tabs.getCurrent())?.id
  if (!('task' in data) || here === undefined || data.tab !== here) return
  const task = toHelperSchema.parse(data.task)
  const shown = task.type === 'map' || task.type === 'plan' ? show(task) : undefined
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
  channel.postMessage({ from: here, refusal: shown && !shown.shown ? shown.message : '' } satisfies FromPractice)
})
