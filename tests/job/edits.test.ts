import { expect, test } from 'vitest'
import { emptyJob, emptyPoint, emptyTest } from '../../lib/job/empty.ts'
import type { Job, TypedPoint } from '../../lib/job/schema.ts'
import { unitSets } from '../../lib/job/units.ts'
import {
  duplicateJob,
  insertPoint,
  isBlank,
  isDeletable,
  neighbour,
  removePoint,
  setPoint,
  shownRows,
} from '../../lib/job/edits.ts'
import { isBlock, placePaste, takeBackPaste } from '../../lib/view/calculator/place-paste.ts'
import { directionFor, roleProblem } from '../../lib/view/calculator/role.ts'
import { putBack, putInTrash, readTrash, takeFromTrash } from '../../lib/view/calculator/trash.ts'

const point = (pressure: string, flow: string, range = ''): TypedPoint => ({ ...emptyPoint(), pressure, flow, range })
const brief = (points: readonly TypedPoint[]) =>
  points.map(({ pressure, flow, range }) => [pressure, flow, range].join(' '))

function jobOf(...roles: string[]): Job {
  return {
    ...emptyJob(unitSets.IP),
    tests: roles.map((role) => emptyTest(role, 'enclosure', unitSets.IP)),
  }
}

function box() {
  const kept = new Map<string, string>()
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  }
}

test('there is always exactly one blank row to type on', () => {
  expect(brief(shownRows([]))).toEqual(['  '])
  expect(brief(shownRows([point('-50', '433', 'middle')]))).toEqual(['-50 433 middle', '  middle'])
  expect(shownRows([point('-50', '433'), emptyPoint()])).toHaveLength(2)
})

test('typing in the last blank row adds a point in the range above it', () => {
  const typed = setPoint([point('-50', '433', 'middle')], 1, { pressure: '-40' })
  expect(brief(typed)).toEqual(['-50 433 middle', '-40  middle'])
  expect(shownRows(typed)).toHaveLength(3)
})

test('typing elsewhere adds no row, and emptying the last cell keeps what is above', () => {
  const points = [point('-50', '433'), point('-40', '374')]
  expect(brief(setPoint(points, 0, { flow: '434' }))).toEqual(['-50 434 ', '-40 374 '])
  expect(setPoint(points, 1, { pressure: '', flow: '' }).filter((row) => !isBlank(row))).toHaveLength(1)
  expect(setPoint(points, 99, { flow: '1' }).filter((row) => !isBlank(row))).toEqual(points)
})

test('a deleted row comes back where it was', () => {
  const points = [point('1', '1'), point('2', '2'), point('3', '3')]
  expect(insertPoint(removePoint(points, 1), 1, points[1]!)).toEqual(points)
})

test('a pasted block goes over the rows from the cell on and leaves cells it does not fill', () => {
  const points = [point('-50', '433', 'wide'), point('-40', '374', 'middle')]
  expect(brief(placePaste(points, 1, 'pressure', [point('-41', '380'), point('-31', '300')]))).toEqual([
    '-50 433 wide',
    '-41 380 middle',
    '-31 300 middle',
  ])
})

test('a line of two numbers is a block, one number with its unit or its groups is none', () => {
  const blocks = ['-51.3 790', '-51,3 790', '790 cfm at -51.3 Pa', '-51.3\t790', '-51.3\n-40']
  expect(blocks.filter((text) => isBlock(text, 'pressure'))).toEqual(blocks)
  const cells = ['-51.3', '-51.3 Pa', '1 790', '1 790 m³/h', 'about fifty']
  expect(cells.filter((text) => isBlock(text, 'flow'))).toEqual([])
  expect(isBlock('range 2 of 3', 'range')).toBe(false)
})

test('a row of a pasted block that lacks a reading keeps none of the point that stood there', () => {
  const points = [point('-50', '433', 'wide'), point('-40', '374', 'middle')]
  expect(brief(placePaste(points, 0, 'pressure', [point('-61', '500'), point('-35', '')]))).toEqual([
    '-61 500 wide',
    '-35  middle',
  ])
})

test('a paste is taken back but for what was typed since', () => {
  const points = [point('-50', '433', 'wide'), emptyPoint()]
  const placed = placePaste(points, 0, 'pressure', [point('-61', '500'), point('-41', '380'), point('-31', '300')])
  expect(brief(takeBackPaste(placed, points, placed)).map((row) => row.trim())).toEqual(['-50 433 wide', ''])
  const typed = setPoint(setPoint(placed, 0, { flow: '501' }), 2, { pressure: '-30' })
  expect(brief(takeBackPaste(typed, points, placed)).map((row) => row.trim())).toEqual(['-50 501 wide', '', '-30'])
})

test('a block of one column goes into the column it was pasted in', () => {
  const points = [point('-50', '', 'wide'), point('-40', '', 'wide')]
  expect(brief(placePaste(points, 0, 'flow', [point('433', ''), point('374', '')]))).toEqual([
    '-50 433 wide',
    '-40 374 wide',
  ])
})

test('roles are unique in a job, whatever their case', () => {
  const job = jobOf('before', 'after')
  expect(roleProblem(job, job.tests[0]!.id, 'before', job.tests[0]!.sheet)).toBe('')
  expect(roleProblem(job, job.tests[0]!.id, ' After ', job.tests[0]!.sheet)).toContain('another role')
  expect(roleProblem(job, '', ' ', job.tests[0]!.sheet)).toContain('Give the test a role')
})

test('a new test may bear the role of one in the other direction', () => {
  const job = jobOf('before', 'after')
  const [before] = job.tests
  const fresh = emptyTest('before', 'enclosure', job.units)
  const sheet = { ...fresh.sheet, direction: directionFor(job, ' Before ', fresh) }
  expect([before!.sheet.direction, sheet.direction]).toEqual(['depressurize', 'pressurize'])
  expect(roleProblem(job, '', 'before', sheet)).toBe('')
  const both = { ...job, tests: [...job.tests, { ...fresh, sheet }] }
  expect(roleProblem(both, '', 'before', sheet)).toContain('another role')
  const ducts = emptyTest('before', 'ducts', job.units)
  expect(directionFor(job, 'before', ducts)).toBe(ducts.sheet.direction)
  expect(roleProblem(job, '', 'before', ducts.sheet)).toContain('another role')
})

test('after a test has gone its neighbour is shown', () => {
  const { tests } = jobOf('a', 'b', 'c')
  expect(neighbour(tests, tests[1]!.id)).toBe(tests[2]!.id)
  expect(neighbour(tests, tests[2]!.id)).toBe(tests[1]!.id)
  expect(neighbour(tests.slice(0, 1), tests[0]!.id)).toBe('')
})

test('the blank row that waits for a point cannot be taken away, be it the first or the last', () => {
  const typed = [point('-50', '790'), point('', ''), point('-40', '')]
  expect(isDeletable([point('', '')], 0)).toBe(false)
  expect(isDeletable([...typed, point('', '')], 3)).toBe(false)
  expect(isDeletable(typed, 3)).toBe(false)
  expect(typed.map((_, row) => isDeletable(typed, row))).toEqual([true, true, true])
})

test('a duplicate is a job of its own and no demo', () => {
  const job = { ...jobOf('before'), demo: true }
  const copy = duplicateJob(job)
  expect(copy.id).not.toBe(job.id)
  expect(copy.tests[0]!.id).not.toBe(job.tests[0]!.id)
  expect(copy).not.toHaveProperty('demo')
  expect(copy.building).toEqual(job.building)
})

test('a deleted test can be put back after the window was closed, under a free role', () => {
  const storage = box()
  const job = jobOf('before', 'after')
  const [gone] = job.tests
  putInTrash(storage, { job: job.id, place: 0, test: gone! })
  expect(readTrash(storage).map((one) => one.test.role)).toEqual(['before'])
  const left = { ...job, tests: [job.tests[1]!, emptyTest('before', 'enclosure', unitSets.IP)] }
  expect(putBack(left, gone!, 0).tests.map(({ role }) => role)).toEqual(['before 2', 'after', 'before'])
  takeFromTrash(storage, gone!.id)
  expect(readTrash(storage)).toEqual([])
})

test('a damaged bin is an empty bin', () => {
  expect(readTrash({ getItem: () => '{"not":"a bin"}' })).toEqual([])
  expect(readTrash({ getItem: () => '{' })).toEqual([])
})
