/** The verdict of several tests as one, written for the screen. */
import { systemsWith } from '../job/house-limit.ts'
import type { Device, Job, Test } from '../job/schema.ts'
import { knownTests, type Several, severalOf } from '../job/together.ts'
import type { VerdictProps } from './shown.ts'
import { roleWords } from '../words/names.ts'
import { say } from '../words/say.ts'
import { verdictLines, withheldLines } from './verdict-lines.ts'

export function severalVerdict({ name, figures, verdict, withheld }: Several): VerdictProps[] {
  const id = (verdict ?? withheld)?.limit.figure
  const found = id === undefined ? undefined : figures[id]
  if (!id || !found) return []
  return [
    {
      title: roleWords(name),
      ...(withheld ? withheldLines(id, found, withheld) : verdictLines(id, found, verdict, [])),
    },
  ]
}

/** The verdict of the house that a system of ducts is part of; nothing while there is none. */
export function houseVerdict(job: Job, test: Test, devices: readonly Device[]): VerdictProps | undefined {
  const systems = systemsWith(job.tests, test)
  if (systems.length === 0) return undefined
  const [sum] = severalOf(knownTests({ ...job, tests: systems }, [...devices]))
  const [found] = sum ? severalVerdict(sum) : []
  const note = say`The limit is for the whole house, so the sum of all duct systems is compared with it.`
  return found && { ...found, notes: [note, ...found.notes] }
}
