/** The report of an entry is made from what the entry holds, for ever. */
import { parse } from 'papaparse'
import { beforeEach, describe, expect, test } from 'vitest'
import { csvParts } from '../../lib/book/csv.ts'
import { closeUnended, endFill, startFill } from '../../lib/book/fills.ts'
import { verify } from '../../lib/book/entries.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import type { FillEntry } from '../../lib/book/schema.ts'
import { entrySchema } from '../../lib/book/entry-schema.ts'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { emptyTest } from '../../lib/job/empty.ts'
import { withReadings } from '../../lib/job/material.ts'
import type { Device, Job } from '../../lib/job/schema.ts'
import { unitSets } from '../../lib/job/units.ts'
import { anchorOf } from '../../lib/report/anchor.ts'
import { basisOf } from '../../lib/report/basis.ts'
import { reportOf, type Content } from '../../lib/report/content.ts'
import { heldContent, sinceThen } from '../../lib/report/held.ts'
import { readPage } from '../../lib/report/page-schema.ts'
import { writePage } from '../../lib/report/write-page.ts'
import { context, fakeFill } from '../book/fake.ts'
import '../book/fresh.ts'
import { eightPoints } from './report-fixtures.ts'

/** Device pressures with their range: the figures rest on the device. */
function byDevice(): Job {
  const job = demoJob()
  const [, after] = job.tests
  const points = [{ pressure: '-50', flow: '', devicePressure: '80', range: 'middle' }]
  const limit = { limit: 'own', ownLimitFigure: 'flow-50', ownLimit: '800' }
  const sheet = { ...after!.sheet, reading: 'device' as const, procedure: 'one-point' as const, points }
  return { ...job, tests: [{ ...after!, ...limit, sheet }] }
}

/** The device after somebody edited the coefficient of the range in use. */
const edited = (): Device => ({
  ...demoDevice(),
  ranges: demoDevice().ranges.map((range) =>
    Object.assign(range, { coefficient: String(Number(range.coefficient) * 1.2) }),
  ),
})

const broken = () => {
  throw new TypeError('no figures')
}

let job: Job
const engine = '0.1.0'
const write = (typed: Job, devices: readonly Device[]) => basisOf(typed, devices, engine)

async function filled(): Promise<FillEntry> {
  const material = withReadings({ job: { id: job.id, name: 'x' }, items: {} }, job, [demoDevice()])
  const fill = fakeFill('fill-1', { job: { id: job.id, name: '14 Tannery Row' } })
  await startFill(fill, { ...context, readings: material.job.readings, write })
  return endFill('fill-1')
}

beforeEach(async () => {
  job = await saveJob(byDevice())
})

/** A report without workings and budgets, which no report shows, and drawn to a hundredth. */
function shownOf(content: Content) {
  const { figures, plot: _, bars: __, ...rest } = content
  return { ...rest, figures: figures.map(({ steps: ___, found: ____, budget: _____, ...line }) => line) }
}

describe('an entry', () => {
  test('holds device, range, certificate, limit, figures with intervals, verdict and version', async () => {
    const { basis } = await filled()
    expect(basis?.engine).toBe(engine)
    expect(basis?.devices).toEqual([demoDevice()])
    const [held] = basis!.tests
    const now = reportOf(job, job.tests[0]!, [demoDevice()], undefined)
    expect(held?.figures['flow-50']?.low).toBeLessThan(held!.figures['flow-50']!.value)
    expect(held?.limit).toMatchObject({ figure: 'flow-50', value: 800 })
    expect(held?.verdict?.outcome).toBe(now.verdict?.verdict?.meets ? 'meets' : 'does not meet')
    expect(held?.verdict?.sentences[0]?.text).toContain('the limit')
    expect(held?.checks.length).toBeGreaterThan(3)
    expect(await verify()).toMatchObject({ ok: true, count: 1 })
  })

  test('gives its report after the device was edited, and says what would come out today', async () => {
    const entry = await filled()
    const then = reportOf(job, job.tests[0]!, [demoDevice()], { number: 1, hash: entry.hash, same: true })
    expect(shownOf(heldContent(entry, job.tests[0]!.id)!)).toEqual(shownOf(then))
    expect(sinceThen(entry, job.tests[0]!.id, [demoDevice()])).toEqual([])
    const today = reportOf(job, job.tests[0]!, [edited()], undefined)
    expect(today.verdict?.value, 'the edit moves the figure').not.toBe(then.verdict?.value)
    const [told, verdict] = sinceThen(entry, job.tests[0]!.id, [edited()])
    expect(told).toContain('was changed since: as it stands now it would give another number. CFM50:')
    expect(told).toContain(`${today.verdict?.value} cfm`)
    expect(told).toContain(`where the entry holds ${then.verdict?.value} cfm`)
    expect(verdict).toBe(
      then.verdict?.verdict?.meets === today.verdict?.verdict?.meets
        ? undefined
        : 'Today’s verdict would be: does not meet the limit. The entry holds another one.',
    )
  })

  test('stands in the table of entries with figures, verdict, tester, device and day of the test', async () => {
    const entry = await filled()
    let csv = ''
    for await (const part of csvParts([entry])) csv += part
    const [row] = parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), { header: true, skipEmptyLines: true }).data
    const held = entry.basis!.tests[0]!
    expect(row).toMatchObject({
      Tester: job.tester.name,
      Device: demoDevice().name,
      Calibrated: demoDevice().calibrated,
      'Dates of tests': job.tests[0]!.date,
      'Compared figure': 'CFM50',
      Value: String(held.figures['flow-50']!.value),
      Limit: '800 cfm',
      Verdict: held.verdict!.outcome,
      'Written in book': entry.book,
    })
    expect(row?.['Figures']).toMatch(/^after: CFM50 \d+/)
  })

  test('says when the engine of today would give another number', async () => {
    const entry = structuredClone(await filled())
    entry.basis!.tests[0]!.figures['flow-50']!.value *= 0.9
    expect(sinceThen(entry, job.tests[0]!.id, [demoDevice()])[0]).toMatch(
      /^The engine of this version would give another number\. CFM50: /,
    )
  })

  test('says so of an interval alone', async () => {
    const entry = structuredClone(await filled())
    entry.basis!.tests[0]!.figures['flow-50']!.low! *= 0.9
    expect(sinceThen(entry, job.tests[0]!.id, [demoDevice()])).toHaveLength(1)
  })

  test('whose fill a crash ended holds the same', async () => {
    const material = withReadings({ job: { id: job.id, name: 'x' }, items: {} }, job, [demoDevice()])
    const fill = fakeFill('fill-1', { job: { id: job.id, name: '14 Tannery Row' } })
    await startFill(fill, { ...context, readings: material.job.readings, write })
    const [entry] = await closeUnended()
    expect(entry?.basis?.tests).toHaveLength(1)
  })

  test('begins also where nothing can be computed', async () => {
    await startFill(fakeFill('fill-1', { job: { id: job.id, name: 'x' } }), { ...context, write: broken })
    const entry = await endFill('fill-1')
    expect(entry).not.toHaveProperty('basis')
    expect(heldContent(entry, job.tests[0]!.id)).toBeUndefined()
    expect(sinceThen(entry, job.tests[0]!.id, [])).toEqual([])
  })

  test('with what a later version added stays valid', async () => {
    const entry = await filled()
    const later = {
      ...entry,
      basis: { ...entry.basis, version: 2, tests: [{ ...entry.basis!.tests[0], page: { a: 1 } }] },
    }
    expect(entrySchema.safeParse(later).success).toBe(true)
    expect(heldContent(later as FillEntry, job.tests[0]!.id)).toBeUndefined()
  })
})

test('a report of the job as it stands says when the device changed after its entry', async () => {
  const entry = await filled()
  const [one] = job.tests
  expect(anchorOf(entry, job, one!, [demoDevice()])).toEqual({ number: 1, hash: entry.hash, same: true })
  const anchor = anchorOf(entry, job, one!, [edited()])
  expect(reportOf(job, one!, [edited()], anchor).record[1]).toBe('Device or limit changed after this entry')
})

test.each([
  ['the demo', demoJob()],
  ['eight points', eightPoints().job],
  ['an empty test', { ...demoJob(), tests: [emptyTest('final', 'ducts', unitSets.SI)] }],
])('every part of a report comes back from an entry: %s', (_, typed) => {
  for (const one of typed.tests) {
    const content = reportOf(typed, one, [demoDevice()], undefined)
    const { plot, bars, ...page } = readPage(1, structuredClone(writePage(content)))!
    const { fingerprint: __, record: ___, ...rest } = content
    expect(shownOf(page as Content)).toEqual(shownOf(rest as Content))
    expect(plot?.marks.length).toBe(content.plot?.marks.length)
    expect(plot?.words).toBe(content.plot?.words)
    expect(bars?.change).toBe(content.bars?.change)
    for (const [at, [x]] of (plot?.band ?? []).entries())
      expect(Math.abs(x - content.plot!.band[at]![0])).toBeLessThan(0.006)
  }
})
