import { render } from 'preact'
import { database } from '../../lib/book/database.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { subscribe } from '../../lib/book/notice.ts'
import { askPersistence } from '../../lib/book/persist.ts'
import '../../lib/job/with-fans.ts'
import '../../lib/view/book/book.css'
import '../../lib/view/book/lists.css'
import '../../lib/view/book/entries.css'
import '../../lib/view/book/notes.css'
import '../../lib/view/book/forms.css'
import '../../lib/view/book/touch.css'
import { keepFocus } from '../../lib/view/parts/keep-focus.ts'
import { Book } from '../../lib/view/book/book.tsx'
import { afterList } from '../../lib/view/book/after-list.ts'
import { answerWhere, closeAbandoned } from '../../lib/extension/open-book.ts'
import { say } from '../../lib/words/say.ts'

// Opened while the page is drawn, not after.
database().catch((error: unknown) => console.error('The book could not be opened.', error))
document.documentElement.lang = say`en`
keepFocus()
render(<Book />, document.getElementById('root')!)

answerWhere()
setTimeout(() => {
  const compared = compareAtStart().then(closeAbandoned)
  compared.catch((error: unknown) => console.error('Open fills could not be ended.', error))
}, afterList)
// Asked once there is something to lose; a browser that asks the person then has a reason.
const stop = subscribe(({ what }) => {
  if (what !== 'entries' && what !== 'jobs') return
  stop()
  askPersistence().catch((error: unknown) => console.error('Persistent storage could not be asked for.', error))
})
