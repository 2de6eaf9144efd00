import { useEffect, useState } from 'preact/hooks'
import { survey, type Survey } from '../../form/controls.ts'
import { onFrames } from '../../form/far.ts'

/** Pages redraw in bursts; the controls are listed again once it has been quiet for this long, in ms. */
const quiet = 300

const elementsOf = ({ controls, leftOut }: Survey) => [...controls, ...leftOut].map(({ element }) => element)

const sameElements = (a: readonly Element[], b: readonly Element[]) =>
  a.length === b.length && a.every((element, index) => element === b[index])

/** The controls of the page, listed again whenever the page changes them. */
export function useSurvey(): Survey {
  const [seen, setSeen] = useState<Survey>(() => survey(document))

  useEffect(() => {
    let timer = 0
    const look = () => {
      const now = survey(document)
      setSeen((before) => (sameElements(elementsOf(before), elementsOf(now)) ? before : now))
    }
    const observer = new MutationObserver(() => {
      clearTimeout(timer)
      timer = window.setTimeout(look, quiet)
    })
    observer.observe(document.documentElement, {
      childList: true,
      subtree: true,
      attributes: true,
      attributeFilter: ['class', 'style', 'hidden', 'disabled', 'readonly', 'type', 'open', 'inert'],
    })
    const life = new AbortController()
    onFrames(look, life.signal)
    return () => {
      life.abort()
      observer.disconnect()
      clearTimeout(timer)
    }
  }, [])

  return seen
}
