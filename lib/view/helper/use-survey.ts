import { useLayoutEffect, useState } from 'preact/hooks'
import { survey, type Survey } from '../../form/controls.ts'
import { onFrames } from '../../form/far.ts'
import { watchRoots } from '../../form/watch-roots.ts'
import { whenQuiet } from '../../form/when-quiet.ts'
import { tellRoots } from './keep-on-top.ts'

/** Pages redraw in bursts; the controls are listed again once it has been quiet for this long, in ms. */
const quiet = 300

/** Attributes that can make a control one that can be filled, or take it away. */
const telling = ['class', 'style', 'hidden', 'disabled', 'readonly', 'type', 'open', 'inert']

const elementsOf = ({ controls, leftOut }: Survey) => [...controls, ...leftOut].map(({ element }) => element)

const sameElements = (a: readonly Element[], b: readonly Element[]) =>
  a.length === b.length && a.every((element, index) => element === b[index])

/** The controls of the page, listed again whenever the page changes them. */
export function useSurvey(): Survey {
  const [seen, setSeen] = useState<Survey>(() => survey(document))

  // An effect that waits for the next frame would miss what a frame of another origin tells until then.
  useLayoutEffect(() => {
    const life = new AbortController()
    const look = () => {
      const now = survey(document)
      watch(now.roots)
      tellRoots(now.roots)
      setSeen((before) => (sameElements(elementsOf(before), elementsOf(now)) ? before : now))
    }
    const watch = watchRoots(whenQuiet(look, quiet, life.signal), life.signal, telling)
    watch(seen.roots)
    tellRoots(seen.roots)
    onFrames(look, life.signal)
    return () => life.abort()
  }, [])

  return seen
}
