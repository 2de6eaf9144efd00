import { render } from 'preact'
import { hearTasks } from '../../lib/view/helper/hear-tasks.ts'
import '../../lib/view/practice/practice.css'
import { PracticeForm } from '../../lib/view/practice/practice-form.tsx'

render(<PracticeForm />, document.getElementById('root')!)
hearTasks()
