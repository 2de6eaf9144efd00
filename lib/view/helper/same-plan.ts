import { alive } from '../../form/page/dom.ts'
import type { Plan } from '../../form/fill/plan.ts'

/** A page may have drawn the same control anew, over and over: the one that was shown is gone then, not exchanged. */
function sameTarget(shown: Element | undefined, now: Element | undefined): boolean {
  return shown === now || (shown !== undefined && now !== undefined && !alive(shown))
}

/** Whether two plans would type the same texts into the same controls over the same contents. */
export function samePlan(shown: Plan, now: Plan): boolean {
  return (
    shown.lines.length === now.lines.length &&
    shown.lines.every((line, index) => {
      const other = now.lines[index]
      return (
        other !== undefined &&
        other.binding === line.binding &&
        other.control === line.control &&
        other.section === line.section &&
        other.text === line.text &&
        other.now === line.now &&
        other.state === line.state &&
        sameTarget(shown.targets.get(line.binding)?.element, now.targets.get(line.binding)?.element)
      )
    })
  )
}
