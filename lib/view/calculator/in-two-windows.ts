/** What is told when two windows have typed into one job at the same time. */
import { nameOf } from '../../job/cells.ts'
import type { Clash } from '../../job/merge.ts'
import type { Job } from '../../job/schema.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

// oxlint-disable-next-line oxc/no-barrel-file -- read together, and only when they are needed
export { mergeJobs, takeTheirs } from '../../job/merge.ts'

/** `after: Point 2, flow` */
function placeOf(job: Job, path: Clash['path']): string {
  const [first, id, ...rest] = path
  if (first !== 'tests') return nameOf(path.join('.'))
  const role = job.tests.find((test) => test.id === id)?.role ?? ''
  const name = nameOf((rest[0] === 'sheet' ? rest.slice(1) : rest).join('.'))
  return role ? `${roleWords(role)}: ${name}` : name
}

const quoted = (value: unknown): string => (typeof value === 'string' ? `“${value.slice(0, 24)}”` : say`something else`)

/** Names the first of the cells that both windows changed, and what stands there now. */
export function clashWords(job: Job, clashes: readonly Clash[]): string {
  const [first] = clashes
  if (!first) return ''
  const place = placeOf(job, first.path)
  const said = say`${place}: ${quoted(first.mine)} stands, as typed here. Another window typed ${quoted(first.theirs)} at the same time.`
  return clashes.length > 1 ? say`${said} So in ${clashes.length - 1} more cells.` : said
}
