import { render } from 'preact'
import { getSettings } from '../../lib/book/settings.ts'
import { hearTasks } from '../../lib/view/helper/hear-tasks.ts'
import { fileWith } from '../../lib/view/helper/filed.ts'
import { filer } from '../../lib/view/pdf-form/filing.ts'
import '../../lib/view/pdf-form/pdf-form.css'
import { PdfForm, type Desk } from '../../lib/view/pdf-form/pdf-form.tsx'
import { say } from '../../lib/words/say.ts'

const desk: Desk = {
  open: undefined,
  opening: () => {
    throw new Error(say`No form is open.`)
  },
  job: '',
  ready: () => {},
}
document.documentElement.lang = say`en`
const wear = async () => {
  const { theme } = await getSettings()
  if (theme !== 'system') document.documentElement.dataset['theme'] = theme
}
// A book that cannot be read is no reason not to open a form.
wear().catch(() => {})
fileWith(
  filer(
    () => desk.open,
    () => desk.opening(),
    () => desk.job,
    (ready) => desk.ready(ready),
  ),
)
hearTasks((task) => {
  if (!desk.open) return say`No form is open on this page yet: choose a PDF there first.`
  desk.job = task.material.job.name
  return ''
})
// A form that was open before a reload is to be chosen anew; its id must not stand over an empty page.
if (location.hash) history.replaceState(undefined, '', location.pathname)
render(<PdfForm desk={desk} />, document.getElementById('root')!)
