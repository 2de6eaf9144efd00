/** Called in the isolated world: bindings made on the page as it is, looked up again after a redesign. */
import { cluesOf } from '../../../lib/form/page/clues.ts'
import { listControls } from '../../../lib/form/page/controls.ts'
import { findAll } from '../../../lib/form/map/find.ts'
import type { Binding } from '../../../lib/form/schema.ts'
import { blockOf, insertLookalike, renameAll, reword, seeded, shuffle, wrap } from './redesign.ts'

export interface Redesigned {
  /** Controls that the redesign left on the page. */
  there: number
  found: number
  /** Not found, and asked about with the right control among those offered. */
  asked: number
  /** Given up on, or asked about, though still there: what and why. */
  lost: string[]
  /** Another control taken for the mapped one: never. */
  wrong: string[]
}

/** @param anew the labels are in other words, several fields go, and what comes in their place may bear their name */
export async function redesign(seed: number, anew = false): Promise<Redesigned> {
  const random = seeded(seed)
  const mapped = listControls(document)
  // As a saved map has them: plain data that went through the book.
  const bindings: Binding[] = JSON.parse(
    JSON.stringify(
      mapped.map((control, at) => ({
        id: String(at),
        control: cluesOf(control),
        source: { from: 'text' as const, text: '' },
      })),
    ),
  )
  const gone = new Set<number>()
  const victims = mapped.flatMap((control, at) => {
    const block = blockOf(control.element, control.elements)
    return block ? [{ at, block, control }] : []
  })
  const pick = () => victims[Math.floor(random() * victims.length)]
  const doubled = pick()
  if (doubled) insertLookalike(doubled.block, random)
  if (anew) {
    reword(random, 0.6, 0, true)
    for (let more = 0; more < 2; more++) {
      const other = pick()
      if (!other || other === doubled || gone.has(other.at)) continue
      insertLookalike(other.block, random, true)
      other.block.remove()
      gone.add(other.at)
    }
  } else if (random() < 0.5) reword(random, 0.3, 0.15)
  if (random() < 0.7) renameAll(random)
  const removed = random() < 0.3 ? doubled : pick()
  if (removed) {
    removed.block.remove()
    gone.add(removed.at)
  }
  if (random() < 0.6) shuffle(random)
  if (random() < 0.6) wrap(random)
  // Component libraries draw in the next frame.
  await new Promise((resolve) => setTimeout(resolve, 20))

  const now = listControls(document)
  const answers = findAll(bindings, now)
  const result: Redesigned = { there: 0, found: 0, asked: 0, lost: [], wrong: [] }
  for (const [at, control] of mapped.entries()) {
    const answer = answers.get(String(at))
    const called = `${seed}: ${control.section} / ${control.name}`
    const right = answer && 'found' in answer && answer.found.elements.some((each) => control.elements.includes(each))
    const shown = now.find(({ elements }) => elements.some((each) => control.elements.includes(each)))
    if (answer && 'found' in answer && !right)
      result.wrong.push(`${called} -> ${answer.found.section} / ${answer.found.name}`)
    if (gone.has(at) || !shown) continue
    result.there += 1
    const offered = !answer || 'found' in answer ? [] : 'ambiguous' in answer ? answer.ambiguous : answer.nearest
    if (right) result.found += 1
    else if (anew && offered.some(({ elements }) => elements.some((each) => control.elements.includes(each))))
      result.asked += 1
    else if (!(answer && 'found' in answer))
      result.lost.push(
        `${called} (now ${shown.section} / ${shown.name}): ${answer && 'ambiguous' in answer ? 'ambiguous' : 'not found'}`,
      )
  }
  return result
}

/** The page as it was mapped. */
export function again(): Redesigned {
  const controls = listControls(document)
  const bindings: Binding[] = controls.map((control, at) => ({
    id: String(at),
    control: cluesOf(control),
    source: { from: 'text', text: '' },
  }))
  const answers = findAll(bindings, listControls(document))
  const result: Redesigned = { there: controls.length, found: 0, asked: 0, lost: [], wrong: [] }
  for (const [at, { element, name }] of controls.entries()) {
    const answer = answers.get(String(at))
    if (!answer || !('found' in answer)) result.lost.push(name)
    else if (answer.found.element === element) result.found += 1
    else result.wrong.push(name)
  }
  return result
}
