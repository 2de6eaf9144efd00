/** What the table of jobs says of each: the figure that counts, its verdict, and what became of the newest fill. */
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Status } from '../../book/entry-schema.ts'
import { everyBook, isFill } from '../../book/rows.ts'
import { listRows } from '../../book/search.ts'
import { judge, systemsWith } from '../../job/house-limit.ts'
import type { Device, Job, Test } from '../../job/schema.ts'
import { reduceTest } from '../../job/reduce.ts'
import { knownTests, severalOf } from '../../job/together.ts'
import type { TestVerdict } from '../../job/verdict.ts'
import type { Report } from '../../reduce/report.ts'
import { decimalsOf, saysUnit, wordOf } from '../../reduce/figures/index.ts'
import { symbol } from '../../units/symbol.ts'
import { write } from '../../units/write.ts'
import { testName } from '../../job/test-name.ts'
import { wordsAfter } from '../../results/words-after.ts'
import { roleWords } from '../../words/names.ts'
import { asRead } from '../../results/in-locale.ts'

/** The figure that a limit is about, else the best known one, as `ACH50 2.87`, of which test, and its verdict. */
export interface FigureFact {
  figure: string
  test: string
  verdict?: 'meets' | 'does not meet' | 'withheld' | undefined
}

export interface JobFacts {
  /** Of the enclosure and of the ducts, as far as they were tested. */
  figures: FigureFact[]
  /** What became of the newest fill, and where it stands. */
  status?: Status | undefined
  entry?: { number: number; book?: string | undefined } | undefined
}

/** Without a limit a test is known by the first of these that it has. Common practice, no source. */
const best = {
  enclosure: ['air-changes-50', 'flow-50'],
  ducts: ['duct-flow-25-per-floor-area', 'duct-flow-25'],
} as const

/**
 * Of the enclosure and of the ducts: the last test that has a verdict; where none has, the last that has figures. Systems
 * of ducts with a limit for the house are told as their sum, which alone has the verdict.
 * @param rest is awaited between two tests, for one takes some time to compute
 */
export async function figuresOf(
  job: Job,
  devices: readonly Device[],
  rest: () => Promise<void> = async () => {},
): Promise<FigureFact[]> {
  const facts: FigureFact[] = []
  for (const subject of ['enclosure', 'ducts'] as const) {
    let shown: FigureFact | undefined
    for (const test of job.tests.filter(({ sheet }) => sheet.subject === subject).toReversed()) {
      const { report } = reduceTest(job, test, [...devices])
      await rest()
      if (!report) continue
      const sum = sumWith(job, test, devices)
      const { limit, verdict, withheld }: Partial<TestVerdict> = sum ?? judge(job, test, report.figures)
      const fact: FigureFact = {
        figure: written(sum ?? report, (verdict?.limit ?? limit ?? withheld?.limit)?.figure, test),
        test: sum ? roleWords(sum.name) : testName(job.tests, test),
      }
      if (verdict) fact.verdict = verdict.meets ? 'meets' : 'does not meet'
      else if (withheld) fact.verdict = 'withheld'
      if (fact.verdict) shown = fact
      else shown ??= fact
      if (fact.verdict) break
    }
    if (shown) facts.push(shown)
  }
  return facts
}

/** The sum of the systems of ducts that a test is one of, where it has a verdict: the limit is for the house. */
function sumWith(job: Job, test: Test, devices: readonly Device[]) {
  const tests = systemsWith(job.tests, test)
  if (tests.length === 0) return undefined
  return severalOf(knownTests({ ...job, tests }, [...devices])).find(({ verdict }) => verdict !== undefined)
}

function written({ figures }: Pick<Report, 'figures'>, asked: string | undefined, { sheet }: Test): string {
  const id = [asked, ...best[sheet.subject]].find((one) => one !== undefined && figures[one] !== undefined)
  const figure = id === undefined ? undefined : figures[id]
  if (id === undefined || figure === undefined) return ''
  const name = wordsAfter(sheet.procedure, wordOf(id, figure.unit))
  const number = asRead(write(figure.value, { decimals: decimalsOf(id, figure.unit) }))
  return saysUnit(id, figure.unit) ? `${name} ${number}` : `${name} ${number} ${symbol(figure.unit)}`.trim()
}

async function factsOf(job: Job, devices: readonly Device[], rest: () => Promise<void>): Promise<JobFacts> {
  const [row] = await listRows({ job: job.id, kind: 'fill', book: everyBook, limit: 1 })
  return {
    figures: await figuresOf(job, devices, rest),
    ...(row && isFill(row) && { status: row.status, entry: { number: row.number, book: row.book } }),
  }
}

/** So long the page may be kept from answering, and so often what is known is drawn, in ms. */
const [slice, drawn] = [8, 120]

/**
 * The facts of the jobs that are shown, worked out one after the other, with room for what the person does meanwhile.
 * `changes`: counts changes of devices and entries, after which all are worked out anew.
 */
export function useJobFacts(
  jobs: readonly Job[],
  devices: readonly Device[] | undefined,
  changes: unknown,
): ReadonlyMap<string, JobFacts> {
  const known = useRef(new Map<string, { of: string; facts: JobFacts }>())
  const [, draw] = useState(0)
  const key = jobs.map(({ id, updated }) => `${id} ${updated}`).join('\n')
  useEffect(() => {
    for (const one of known.current.values()) one.of = ''
  }, [devices, changes])
  useEffect(() => {
    if (!devices) return
    const stop = new AbortController()
    const work = async () => {
      let [begun, shown] = [performance.now(), performance.now()]
      const rest = async () => {
        if (performance.now() - begun < slice) return
        await new Promise((resolve) => setTimeout(resolve, 0))
        begun = performance.now()
      }
      for (const job of jobs) {
        if (known.current.get(job.id)?.of === job.updated) continue
        const facts = await factsOf(job, devices, rest).catch((): JobFacts => ({ figures: [] }))
        if (stop.signal.aborted) return
        known.current.set(job.id, { of: job.updated, facts })
        if (performance.now() - shown > drawn) {
          draw((times) => times + 1)
          shown = performance.now()
        }
        await rest()
      }
      draw((times) => times + 1)
    }
    void work()
    return () => stop.abort()
  }, [key, devices, changes])
  return new Map([...known.current].map(([id, { facts }]) => [id, facts]))
}
