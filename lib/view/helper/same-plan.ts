import type { Plan } from '../../form/plan.ts'

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
        shown.targets.get(line.binding)?.element === now.targets.get(line.binding)?.element
      )
    })
  )
}
