import { render } from 'preact'
import { browser } from '../../lib/browser.ts'
import { offerExtra } from '../../lib/form/write/extra.ts'
import { toHelperSchema } from '../../lib/messages.ts'
import '../../lib/view/paper.css'
import { Mapping } from '../../lib/view/helper/mapping.tsx'
import { PlanScreen } from '../../lib/view/helper/plan-screen.tsx'
import { stage } from '../../lib/view/helper/stage.tsx'
import { channelName, type FromPractice, type ToPractice } from '../../lib/view/practice/practice.ts'
import '../../lib/view/practice/practice.css'
import { PracticeForm } from '../../lib/view/practice/practice-form.tsx'
import helperCss from '../helper/style.css?inline'
import mappingCss from '../mapping/style.css?inline'

offerExtra()
render(<PracticeForm />, document.getElementById('root')!)

// No script can be put into a page of the extension, so this one has the helper from the start.
const show = stage(helperCss + mappingCss, new AbortController().signal, (task) => {
  const { material } = task
  return task.type === 'plan' ? (
    <PlanScreen material={material} map={task.map} onMap={() => show({ type: 'map', material, map: task.map })} />
  ) : (
    <Mapping material={material} map={task.map} onPlan={(map) => show({ type: 'plan', material, map })} />
  )
})
const channel = new BroadcastChannel(channelName)
channel.addEventListener('message', async ({ data }: MessageEvent<ToPractice | FromPractice>) => {
  const here = (await browser.tabs.getCurrent())?.id
  if (!('task' in data) || here === undefined || data.tab !== here) return
  const task = toHelperSchema.parse(data.task)
  const shown = task.type === 'map' || task.type === 'plan' ? show(task) : undefined
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
  channel.postMessage({ from: here, refusal: shown && !shown.shown ? shown.message : '' } satisfies FromPractice)
})
