import { expect, test } from 'vitest'
import { textOf } from '../../lib/form/fill/text.ts'
import { figuresCsv } from '../../lib/form/fill/file.ts'
import { isEmpty } from '../../lib/form/item-of.ts'
import { materialSchema } from '../../lib/form/material.ts'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { emptyJob, emptyTest } from '../../lib/job/empty.ts'
import { withEmpty } from '../../lib/job/material-empty.ts'
import { material } from '../../lib/job/material.ts'
import { unitSets } from '../../lib/job/units.ts'

const bare = { ...emptyJob(unitSets.IP), tests: [emptyTest('after', 'enclosure', unitSets.IP)] }
const demo = withEmpty(material(demoJob(), [demoDevice()]), demoJob(), [demoDevice()])

test('a job that has nothing yet lists what it could hold, all of it empty but the day of its test', () => {
  const { items } = withEmpty(material(bare, []), bare, [])
  for (const id of [
    'job/street',
    'job/climate-zone',
    'job/volume',
    'tester/licence-expiry',
    'after/notes',
    'after/stage',
  ])
    expect(items[id], `${id}`).toMatchObject({ label: expect.any(String) })
  for (const id of ['after/flow-50', 'after/air-changes-50', 'after/verdict', 'after/device-serial'])
    expect(isEmpty(items[id]!), `${id}`).toBe(true)
  const known = material(bare, []).items
  expect(
    Object.keys(items)
      .filter((id) => !isEmpty(items[id]!))
      .toSorted(),
  ).toEqual(Object.keys(known).toSorted())
})

test('what the job has stays as it is', () => {
  const { items } = material(demoJob(), [demoDevice()])
  expect(demo.items).toMatchObject(items)
  expect(Object.keys(demo.items).length).toBeGreaterThan(Object.keys(items).length)
})

test('an item of ducts is empty in a test of ducts only', () => {
  expect('after/duct-flow-25' in demo.items).toBe(false)
  expect('duct system 1/duct-qn' in demo.items).toBe(true)
  expect('duct system 1/air-changes-50' in demo.items).toBe(false)
})

test('nothing empty is ever entered, and no file lists it', () => {
  const empty = Object.entries(demo.items).filter(([, item]) => isEmpty(item))
  expect(empty.length).toBeGreaterThan(5)
  for (const [item] of empty)
    expect(textOf({ from: 'item', item, write: {} }, demo, { kind: 'text', options: [] }), `${item}`).toHaveProperty(
      'refused',
    )
  expect(figuresCsv(demo)).toBe(figuresCsv(material(demoJob(), [demoDevice()])))
})

test('it travels as messages do', () => {
  expect(materialSchema.parse(JSON.parse(JSON.stringify(demo)))).toEqual(demo)
})
