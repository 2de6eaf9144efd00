/** The figures and verdicts that the table of jobs shows. */
import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { emptyJob, emptyPoint, emptyTest } from '../../lib/job/empty.ts'
import { unitSets } from '../../lib/job/units.ts'
import { reportOf } from '../../lib/report/content.ts'
import { figuresOf } from '../../lib/view/book/job-facts.ts'

test('are those of the last test of the enclosure and of the ducts that has a verdict', async () => {
  expect(await figuresOf(demoJob(), [demoDevice()])).toMatchInlineSnapshot(`
    [
      {
        "figure": "ACH50 2.86",
        "test": "after",
        "verdict": "meets",
      },
      {
        "figure": "CFM25/100 ft² 3.8",
        "test": "duct system 1",
        "verdict": "meets",
      },
    ]
  `)
})

test('are none where nothing was read', async () => {
  expect(await figuresOf({ ...demoJob(), tests: [] }, [])).toEqual([])
})

test('without a limit are those of the last tests that have figures', async () => {
  const job = demoJob()
  const tests = job.tests.map((one) => Object.assign(one, { limit: '' }))
  const figures = await figuresOf({ ...job, tests }, [demoDevice()])
  expect(figures.map(({ verdict }) => verdict)).toEqual([undefined, undefined])
  expect(figures.every(({ figure }) => figure !== '')).toBe(true)
})

test('of two systems of ducts are those of their sum, which alone is held to the limit of the house', async () => {
  const job = demoJob()
  const first = job.tests.find(({ sheet }) => sheet.subject === 'ducts')!
  const reading = { ...first.sheet.points[0]!, pressure: '25.4', flow: '40' }
  const second = {
    ...first,
    id: 'system-2',
    role: 'duct system 2',
    sheet: { ...first.sheet, points: [reading] },
  }
  const [, ducts] = await figuresOf({ ...job, tests: [...job.tests, second] }, [demoDevice()])
  // By hand: (71 + 40) x (25 / 25.3)^0.6 = 110.2 cfm; over 1,860 ft², 100 x 110.2 / 1860 = 5.93, above 4.0.
  expect(ducts).toEqual({ figure: 'CFM25/100 ft² 5.9', test: 'duct systems', verdict: 'does not meet' })
})

/** Points on 84.6 ΔP^0.65 m³/h for the house, and one of 600 m³/h at 25 Pa for the ducts. */
function pointsOf(subject: 'enclosure' | 'ducts') {
  const flows =
    subject === 'ducts'
      ? [[25, 600]]
      : [60, 50, 40, 30, 20, 15].map((pressure) => [pressure, Number((84.6 * pressure ** 0.65).toFixed(1))])
  return flows.map(([pressure, flow]) =>
    Object.assign(emptyPoint(), { pressure: String(pressure), flow: String(flow) }),
  )
}

function testOf(role: string, subject: 'enclosure' | 'ducts', direction: 'depressurize' | 'pressurize') {
  const one = emptyTest(role, subject, unitSets.SI)
  const procedure = subject === 'enclosure' ? ('iso-9972' as const) : ('one-point' as const)
  return { ...one, sheet: { ...one.sheet, procedure, direction, points: pointsOf(subject) } }
}

/** A job without a limit: the house in both directions after ISO 9972, and a test of the ducts. */
function unlimited() {
  const blank = emptyJob(unitSets.SI)
  const tests = [
    testOf('final', 'enclosure', 'depressurize'),
    testOf('final', 'enclosure', 'pressurize'),
    testOf('x', 'ducts', 'pressurize'),
  ]
  return { ...blank, building: { ...blank.building, volume: '500' }, tests }
}

test('have the words of the procedure, the flow of the ducts at their own pressure, and name each direction', async () => {
  const [house, ducts] = await figuresOf(unlimited(), [])
  // By hand: 84.6 × 50^0.65 = 1,075.7 m³/h over 500 m³ is 2.15.
  expect(house).toMatchObject({ figure: expect.stringMatching(/^n50 2\.15/), test: 'final, pressurize' })
  expect(ducts).toMatchObject({ figure: 'Q25 600 m³/h', test: 'x' })
})

test('the report of such a test says n50 throughout, and one sign before a margin', () => {
  const job = unlimited()
  const { several, figures, checks, readings } = reportOf(job, job.tests[1]!, [], undefined)
  const said = [...figures.flatMap(({ name, detail }) => [name, detail]), JSON.stringify(checks)].join(' ')
  // No device has ranges here, so there is no column of them.
  expect(readings.heads.map(([head]) => head)).toEqual(['', 'House', 'Flow', 'ΔP', 'Leakage', 'Off line'])
  expect(readings.rows[0]).toEqual(['1', '60', '1211.1', '60.0', '1211', '0.0'])
  expect(said).toMatch(/n50/)
  expect(said).not.toMatch(/ACH50/)
  expect(several.join()).toMatch(/both directions/)
  expect(several.join()).not.toMatch(/± −/)
})
