import type { Control } from '../../form/page/controls.ts'
import type { Plan } from '../../form/fill/plan.ts'
import type { ReceiptLine } from '../../form/schema.ts'
import type { Mark } from './page-marks.ts'
import { say, shown } from '../../words/say.ts'

/** The outlines while a plan is shown: each control carries the number of its line. */
export function planMarks(plan: Plan, left: ReadonlySet<string>, pointed: Control | string | undefined): Mark[] {
  return plan.lines.flatMap((line, index): Mark[] => {
    const number = String(index + 1)
    const target = plan.targets.get(line.binding)
    if (target) {
      const look = pointed === line.binding ? 'lit' : left.has(line.binding) ? 'free' : 'bound'
      return [{ elements: target.elements, look, tag: number }]
    }
    return (plan.candidates.get(line.binding) ?? []).map((control) => ({
      elements: control.elements,
      look: pointed === control ? 'lit' : 'two',
      tag: say`${number}: this one?`,
    }))
  })
}

/** After a fill only what needs a look is outlined. */
export function receiptMarks(lines: readonly ReceiptLine[], targets: ReadonlyMap<string, Control>): Mark[] {
  return lines.flatMap((line, index): Mark[] => {
    const target = targets.get(line.binding)
    if (!target || line.outcome === 'entered') return []
    return [{ elements: target.elements, look: 'two', tag: `${index + 1}: ${shown(line.outcome)}` }]
  })
}
