/** The figures and verdicts that the table of jobs shows. */
import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
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
