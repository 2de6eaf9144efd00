/** What the inputs come to, in figures and in words. */
import { reduceTest, type ReducedTest } from '../job/reduce.ts'
import type { Device, Job } from '../job/schema.ts'
import { verdictOf } from '../job/verdict.ts'
import type { Verdict, Withheld } from '../limits/verdict.ts'
import type { Problem } from '../job/problem.ts'
import { wordReading, type Reading } from '../results/reading.ts'
import { readingInLocale } from '../results/in-locale.ts'
import { jobFromLocale } from './job-from-locale.ts'
import { testOf } from './typed.ts'
import type { Options } from './types.ts'

export interface Computed extends ReducedTest {
  reading: Reading
  verdict: Verdict | undefined
  /** Why there is no verdict: the limit chosen is not for the test. */
  withheld: Withheld | undefined
  /** Of cells and of the limit. */
  problems: Problem[]
}

export function compute(typed: Job, devices: readonly Device[], options: Options): Computed {
  const job = jobFromLocale(typed, options.locale)
  const test = testOf(job)
  const reduced = reduceTest(job, test, [...devices])
  const { verdict, withheld, problems } = verdictOf(job, test, reduced.report?.figures)
  const wanted = ({ length }: string[], id: string) => length === 0 || options.figures.includes(id)
  const reading = wordReading(job, test, reduced, (id) => wanted(options.figures, id))
  const groups = reading.groups
    .map(({ title, lines }) => ({ title, lines: lines.filter(({ id }) => wanted(options.figures, id)) }))
    .filter(({ lines }) => lines.length > 0)
  return {
    ...reduced,
    reading: readingInLocale({ ...reading, groups }, options.locale),
    verdict,
    withheld,
    problems: [...reduced.problems, ...problems],
  }
}
