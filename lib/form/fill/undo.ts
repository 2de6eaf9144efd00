/** Putting back what stood in the page before a fill. */
import { alive } from '../page/dom.ts'
import { listControls, type Control } from '../page/controls.ts'
import { addedKinds } from '../kind-traits.ts'
import { findAll, type Found } from '../map/find.ts'
import type { Plan } from './plan.ts'
import { shown } from './read.ts'
import type { Outcome, PlanLine, ReceiptLine } from '../schema.ts'
import { say } from '../../words/say.ts'

/** Outcomes of controls that the fill did not touch. */
const unreached: ReadonlySet<Outcome> = new Set(['not found', 'ambiguous'])

function undoLine(line: ReceiptLine, target: Control | undefined, found: Found | undefined): PlanLine {
  const back: PlanLine = {
    binding: line.binding,
    control: line.control,
    section: line.section,
    source: say`as it was before`,
    text: line.before,
    now: target ? shown(target) : '',
    state: 'will replace',
    note: '',
  }
  if (target?.far && addedKinds.has(target.kind)) {
    back.state = 'refused'
    back.note = say`the text was added to what stood there: take it out by hand`
  } else if (!target) back.state = found && 'ambiguous' in found ? 'ambiguous' : 'not found'
  else if (back.now !== line.readBack) {
    back.state = 'refused'
    back.note = say`changed since the fill, left as it is`
  }
  return back
}

/**
 * The plan of an undo: for every control that the fill changed, what stood there before. A control whose content has
 * changed since is left alone, so that nothing typed by hand after the fill is lost.
 */
export function undoPlan(lines: readonly ReceiptLine[], filled: Plan): Plan {
  const { bindings, document } = filled
  const changed = lines.filter(({ before, readBack, outcome }) => before !== readBack && !unreached.has(outcome))
  const answers = findAll(bindings, listControls(document))
  const targets = new Map([...filled.targets].filter(([, { element }]) => alive(element)))
  const candidates = new Map(filled.candidates)
  const planned = changed.map((line) => {
    const found = answers.get(line.binding)
    if (found && 'found' in found && !targets.has(line.binding)) targets.set(line.binding, found.found)
    if (found && 'ambiguous' in found && !targets.has(line.binding)) candidates.set(line.binding, found.ambiguous)
    return undoLine(line, targets.get(line.binding), found)
  })
  return { document, bindings, lines: planned, targets, candidates, leftToYou: [], exact: true }
}
