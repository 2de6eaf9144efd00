import { render } from 'preact'
import { browser } from '../../lib/browser.ts'
import { toHelperSchema } from '../../lib/messages.ts'
import '../../lib/view/tokens.css'
import '../../lib/view/base.css'
import '../../lib/view/paper.css'
import { stage } from '../../lib/view/helper/stage.tsx'
import { channelName, type FromPractice, type ToPractice } from '../../lib/view/practice/practice.ts'
import '../../lib/view/practice/practice.css'
import { PracticeForm } from '../../lib/view/practice/practice-form.tsx'
import css from '../helper/style.css?inline'

render(<PracticeForm />, document.getElementById('root')!)

// No script can be put into a page of the extension, so this one has the helper from the start.
const show = stage(css, new AbortController().signal)
const channel = new BroadcastChannel(channelName)
channel.addEventListener('message', async ({ data }: MessageEvent<ToPractice | FromPractice>) => {
  const here = (await browser.tabs.getCurrent())?.id
  if (!('task' in data) || here === undefined || data.tab !== here) return
  const task = toHelperSchema.parse(data.task)
  const shown = task.type === 'map' || task.type === 'plan' ? show(task) : undefined
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
  channel.postMessage({ from: here, refusal: shown && !shown.shown ? shown.message : '' } satisfies FromPractice)
})
