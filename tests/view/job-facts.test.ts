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
