import type { Control } from '../../form/page/controls.ts'
import { boxOf } from './box.ts'
import type { CandidateImage } from '../../messages/dock-messages.ts'
import { say, shown } from '../../words/say.ts'

type Candidate = Omit<CandidateImage, 'binding'>

/** Names for controls that look the same: by where they stand, else by their heading, else in the page's order. */
export function placesOf(controls: readonly Control[]): Candidate[] {
  const boxes = controls.map(({ elements }) => boxOf(elements))
  const [a, b] = boxes
  const sections = new Set(controls.map(({ section }) => section))
  return controls.map(({ section }, index): Candidate => {
    if (sections.size === controls.length && section) return { index, label: say`the one under “${section}”` }
    if (controls.length === 2 && a && b) {
      const first = index === 0
      if (Math.abs(a.top - b.top) < 8)
        return { index, label: a.left < b.left === first ? say`the left one` : say`the right one` }
      return { index, label: a.top < b.top === first ? say`the upper one` : say`the lower one` }
    }
    return { index, label: say`number ${index + 1} on the page` }
  })
}

/** What controls that do not fit are called, so that the person can say which of them is meant. */
export function namesOf(controls: readonly Control[]): Candidate[] {
  const alone = new Set(controls.map(({ section }) => section)).size < 2
  return controls.map(({ name, section, kind }, index): Candidate => {
    const called = name || shown(kind)
    return { index, label: alone || !section ? `“${called}”` : say`“${called}” under “${section}”` }
  })
}
