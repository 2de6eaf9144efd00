/** The controls of a page, listed again whenever the page changes them. */
import { survey, type Survey } from '../../form/page/controls.ts'
import { onFrames } from '../../form/page/far.ts'
import { watchRoots } from '../../form/page/watch-roots.ts'
import { whenQuiet } from '../../form/page/when-quiet.ts'

/** Pages redraw in bursts; the controls are listed again once it has been quiet for this long, in ms. */
const quiet = 300

/** Attributes that can make a control one that can be filled, or take it away. */
const telling = ['class', 'style', 'hidden', 'disabled', 'readonly', 'type', 'open', 'inert']

const elementsOf = ({ controls, leftOut }: Survey) => [...controls, ...leftOut].map(({ element }) => element)

const sameElements = (a: readonly Element[], b: readonly Element[]) =>
  a.length === b.length && a.every((element, index) => element === b[index])

/**
 * Says the controls at once, and again when others are there.
 * @param looked takes what was walked at each look
 * @param look looks at the page
 * @param opening what such a look has just found
 */
export function watchSurvey(
  take: (seen: Survey) => void,
  signal: AbortSignal,
  looked: (roots: readonly Node[]) => void,
  look: () => Survey = () => survey(document),
  opening: Survey = look(),
): void {
  let seen: Survey | undefined
  const judge = (now: Survey) => {
    watch(now.roots)
    looked(now.roots)
    if (seen && sameElements(elementsOf(seen), elementsOf(now))) return
    seen = now
    take(now)
  }
  const again = () => judge(look())
  const watch = watchRoots(whenQuiet(again, quiet, signal), signal, telling)
  onFrames(again, signal)
  judge(opening)
}
