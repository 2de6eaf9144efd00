import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mergeJobs, takeTheirs } from '../../lib/job/merge.ts'
import type { Job, Test, TypedPoint } from '../../lib/job/schema.ts'
import { fakeJob, fakeTest } from './fake.ts'

const base = fakeJob()
const after = (job: Job): Test => job.tests.find(({ role }) => role === 'after')!
const withAfter = (job: Job, change: (test: Test) => Test): Job => ({
  ...job,
  tests: job.tests.map((one) => (one.role === 'after' ? change(one) : one)),
})
const withPoints = (job: Job, change: (points: TypedPoint[]) => TypedPoint[]): Job =>
  withAfter(job, (one) => ({ ...one, sheet: { ...one.sheet, points: change(one.sheet.points) } }))
const typed = (job: Job, row: number, cell: keyof TypedPoint, text: string): Job =>
  withPoints(job, (points) => points.map((point, at) => (at === row ? { ...point, [cell]: text } : point)))

const rowAt = (pressure: string): TypedPoint => ({ pressure, flow: '1', devicePressure: '', range: '' })
const allOf = (list: { row: number; cell: keyof TypedPoint; text: string }[]) =>
  list.reduce((job, { row, cell: at, text }) => typed(job, row, at, text), base)

describe('one job of two that were typed in at the same time', () => {
  test('cells that only one changed are taken from it', () => {
    const mine = typed(base, 0, 'flow', '791')
    const theirs = { ...typed(base, 0, 'pressure', '-51.4'), building: { ...base.building, volume: '15,800' } }
    const { job, clashes } = mergeJobs(base, mine, theirs)
    expect(clashes).toEqual([])
    expect(after(job).sheet.points[0]).toMatchObject({ pressure: '-51.4', flow: '791' })
    expect(job.building.volume).toBe('15,800')
  })

  test('of a cell that both changed mine stands, the clash is told, and can be decided the other way', () => {
    const [mine, theirs] = [typed(base, 1, 'flow', '660'), typed(base, 1, 'flow', '665')]
    const { job, clashes } = mergeJobs(base, mine, theirs)
    expect(after(job).sheet.points[1]?.flow).toBe('660')
    expect(clashes).toEqual([
      { path: ['tests', after(base).id, 'sheet', 'points', 1, 'flow'], mine: '660', theirs: '665' },
    ])
    expect(after(takeTheirs(job, clashes)).sheet.points[1]?.flow).toBe('665')
  })

  test('rows that both added are all there', () => {
    const [mine, theirs] = ['-20', '-15'].map((one) => withPoints(base, (points) => [...points, rowAt(one)]))
    const { job, clashes } = mergeJobs(base, mine!, theirs!)
    expect(
      after(job)
        .sheet.points.map(({ pressure }) => pressure)
        .slice(-2),
    ).toEqual(['-20', '-15'])
    expect(clashes).toEqual([])
  })

  test('a test that one deleted stays deleted, unless the other typed in it', () => {
    const mine = { ...base, tests: base.tests.filter(({ role }) => role !== 'before') }
    expect(mergeJobs(base, mine, typed(base, 0, 'flow', '791')).job.tests.map(({ role }) => role)).not.toContain(
      'before',
    )
    const theirs = { ...base, tests: base.tests.map((one) => (one.role === 'before' ? { ...one, notes: 'x' } : one)) }
    expect(mergeJobs(base, mine, theirs).job.tests.map(({ role }) => role)).toContain('before')
  })

  test('a test that one added is there', () => {
    const added = { ...base, tests: [...base.tests, { ...fakeTest(), id: 'new', role: 'final' }] }
    expect(mergeJobs(base, typed(base, 0, 'flow', '791'), added).job.tests).toHaveLength(base.tests.length + 1)
  })

  test('nothing typed by either side is lost without being told', () => {
    const cell = fc.record({
      row: fc.integer({ min: 0, max: 2 }),
      cell: fc.constantFrom('pressure' as const, 'flow' as const, 'range' as const),
      // Never what stands there already: that is no edit.
      text: fc.stringMatching(/^[0-9]{1,3}\.5$/),
    })
    const edits = fc.array(cell, { maxLength: 4 })
    fc.assert(
      fc.property(edits, edits, (ours, others) => {
        const [mine, theirs] = [allOf(ours), allOf(others)]
        const { job, clashes } = mergeJobs(base, mine, theirs)
        for (const { row, cell: at } of ours)
          expect(after(job).sheet.points[row]?.[at]).toBe(after(mine).sheet.points[row]?.[at])
        for (const { row, cell: at } of others) {
          const [there, here] = [after(theirs).sheet.points[row]?.[at], after(job).sheet.points[row]?.[at]]
          const told = clashes.some(({ path }) => path.slice(-2).join() === `${row},${at}`)
          expect(told || there === here || there === after(base).sheet.points[row]?.[at]).toBe(true)
        }
      }),
    )
  })
})
