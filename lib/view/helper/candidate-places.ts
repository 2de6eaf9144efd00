import type { Control } from '../../form/controls.ts'
import { boxOf } from './box.ts'
import type { Candidate } from './choose-control.tsx'

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth']

/** Names for controls that look the same: by where they stand, else by their heading, else in the page's order. */
export function placesOf(controls: readonly Control[]): Candidate[] {
  const boxes = controls.map(({ elements }) => boxOf(elements))
  const [a, b] = boxes
  const sections = new Set(controls.map(({ section }) => section))
  return controls.map(({ section }, index): Candidate => {
    if (sections.size === controls.length && section) return { index, label: `the one under “${section}”` }
    if (controls.length === 2 && a && b) {
      const first = index === 0
      if (Math.abs(a.top - b.top) < 8)
        return { index, label: a.left < b.left === first ? 'the left one' : 'the right one' }
      return { index, label: a.top < b.top === first ? 'the upper one' : 'the lower one' }
    }
    return { index, label: `the ${ordinals[index] ?? `${index + 1}th`} on the page` }
  })
}
