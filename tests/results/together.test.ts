/** What the tests of a job say together, in words and numbers for the screen. */
import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import type { Job, Test } from '../../lib/job/schema.ts'
import { together } from '../../lib/job/together.ts'
import type { FigureLine } from '../../lib/results/shown.ts'
import { reportOf } from '../../lib/report/content.ts'
import { togetherWords } from '../../lib/results/together-lines.ts'

const words = (job: Job) => togetherWords(together(job, [demoDevice()]))
const written = ({ name, detail, value, margin, unit }: FigureLine) =>
  [name, detail, value, margin && `± ${margin}`, unit].filter(Boolean).join(' ')
const rows = (job: Job) => words(job)?.groups.map(({ title, lines }) => [title].concat(lines.map(written)))
const of = (job: Job, role: string): Test => job.tests.find((one) => one.role === role)!
const only = (...tests: Test[]): Job => ({ ...demoJob(), tests })

test('the work between before and after, as a form is filled with it', () => {
  const job = demoJob()
  const [work] = words(job)!.groups
  expect(rows(job)![0]).toMatchInlineSnapshot(`
    [
      "before to after: house, depressurize, one-point",
      "Reduction of CFM50 691 ± 56 cfm",
      "Reduction in percent 47.8 ± 1.8 %",
    ]
  `)
  expect(words(job)!.summary).toMatchInlineSnapshot(`"CFM50 down 691 cfm, 47.8 %"`)
  const { items } = material(job, [demoDevice()])
  const filled = items['before+after/reduction']
  expect(filled?.kind === 'quantity' && filled.value.toFixed(0)).toBe(work!.lines[0]!.value)
  expect(work!.lines.map(({ steps }) => steps.map(({ step }) => step))).toEqual([
    ['Reduction', '95 % half-width of the reduction'],
    ['Reduction in percent', '95 % half-width in percent'],
  ])
})

test('more leakage after than before is said so', () => {
  const job = demoJob()
  const swapped = only({ ...of(job, 'before'), role: 'after' }, { ...of(job, 'after'), role: 'before' })
  expect(words(swapped)!.summary).toMatch(/^CFM50 up [\d,]+ cfm, [\d.]+ %$/)
})

/** The mean of two flows, by hand. */
test('the mean of both directions of one role, with how far they lie apart', () => {
  const down = of(demoJob(), 'after')
  const turned = down.sheet.points.map((point) => ({ ...point, pressure: point.pressure.replace(/^[-−]/, '') }))
  const up: Test = {
    ...down,
    id: 'up',
    role: 'After ',
    sheet: { ...down.sheet, direction: 'pressurize', points: turned },
  }
  const said = words(only(down, up))!
  expect(said.groups.map(({ title }) => title)).toEqual(['after, both directions'])
  const value = (job: Job) =>
    Number(words(job)!.groups[0]!.lines.find(({ name, detail }) => name === 'CFM50' && !detail)!.value)
  const single = (one: Test) => material(only(one), [demoDevice()]).items[`${one.role.trim()}/flow-50`]
  const [one, other] = [single(down), single(up)]
  if (one?.kind !== 'quantity' || other?.kind !== 'quantity') throw new Error('no CFM50')
  expect(value(only(down, up))).toBeCloseTo((one.value + other.value) / 2, 0)
  expect(said.checks.map(({ id, outcome }) => [id, outcome])).toEqual([['after, both directions directions', 'good']])
  expect(new Set(said.groups[0]!.lines.map(({ id }) => id)).size).toBe(said.groups[0]!.lines.length)
})

test('several tests that are set against one limit have one verdict, in the calculator and in the report of each', () => {
  const one: Test = { ...of(demoJob(), 'duct system 1'), limit: 'own', ownLimit: '6' }
  const two: Test = { ...one, id: 'two', role: 'duct system 2' }
  const job = only(one, two)
  const said = words(job)!.verdicts.map(({ title, value, unit, verdict }) => [title, value, unit, verdict?.text])
  expect(said).toEqual([['duct systems', '7.6', 'cfm/100 ft²', 'Does not meet the limit, 6.0 cfm/100 ft²']])
  for (const each of [one, two])
    expect(reportOf(job, each, [demoDevice()], undefined).several).toMatchInlineSnapshot(`
      [
        "Duct systems: 142 ± 7 CFM25, 7.6 ± 0.5 cfm/100 ft². Does not meet the limit, 6.0 cfm/100 ft². Less than 1 % likely below 6.0.",
      ]
    `)
  expect(words(only(one, { ...two, ownLimit: '9' }))!.verdicts).toEqual([])
  expect(reportOf(only(one), one, [demoDevice()], undefined).several).toEqual([])
})

test('duct systems are added up', () => {
  const one = of(demoJob(), 'duct system 1')
  const job = only(one, { ...one, id: 'two', role: 'duct system 2' })
  expect(rows(job)).toMatchInlineSnapshot(`
    [
      [
        "duct systems",
        "CFM25 142 ± 7 cfm",
        "CFM25/100 ft² 7.6 ± 0.5 cfm/100 ft²",
        "% of air-handler flow 6.7 ± 0.4 %",
      ],
    ]
  `)
})

test('nothing is said of tests that do not belong together', () => {
  const job = demoJob()
  expect(words(only())).toBeUndefined()
  expect(words(only(of(job, 'after')))).toBeUndefined()
  expect(words(only(of(job, 'after'), of(job, 'duct system 1')))).toBeUndefined()
})
