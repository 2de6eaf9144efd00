import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { readingOf } from '../../lib/results/reading.ts'
import { paragraphMaterial, paragraphOf, usualParts } from '../../lib/results/paragraph.ts'

const devices = [demoDevice()]
const of = (role: string, job = demoJob()) => {
  const one = job.tests.find((made) => made.role === role)!
  return paragraphMaterial(job, one, devices, readingOf(job, one, devices).verdict)
}

test('the usual wording holds the date, the verdict and whose edition counts', () => {
  const { plain, html, missing } = paragraphOf(usualParts(of('after')), of('after'))
  expect(missing).toEqual([])
  expect(plain).toContain('14 Tannery Row, Marrowby, Larch County')
  expect(plain).toContain('2026-02-11')
  expect(plain).toContain('2.86 ± 0.17 ACH50')
  expect(plain).toContain('Meets the limit, 3.0 ACH50.')
  expect(plain).toMatch(/IECC 2021 R402\.4\.1\.3.*[Cc]heck the edition/)
  expect(html).toContain('<b>2.86 ± 0.17 ACH50</b>')
})

test('the usual wording reads on where a job has no address, and a test no limit', () => {
  const job = demoJob()
  Object.assign(job.building, { street: '', unit: '', town: '', state: '', postcode: '' })
  for (const one of job.tests) one.limit = ''
  const material = of('after', job)
  const { plain, missing } = paragraphOf(usualParts(material), material)
  expect(missing).toEqual([])
  expect(plain).toMatch(/^Air leakage test on 2026-02-11: 2\.86 ± 0\.17 ACH50\./)
})

test('one wording serves every test', () => {
  expect(paragraphOf(usualParts(of('duct system 1')), of('duct system 1')).plain).toMatch(/cfm\/100 ft²|CFM25/)
})

test('a figure of its own rounding between own words', () => {
  const { plain } = paragraphOf(
    [{ text: 'We read ' }, { item: 'test/flow-50', write: { decimals: 1 } }, { text: ' cfm.' }],
    of('after'),
  )
  expect(plain).toBe('We read 753.7 cfm.')
})

test('what the job does not have is told, and signs of HTML stay signs', () => {
  const { plain, html, missing } = paragraphOf(
    [{ text: 'a < b & c ' }, { item: 'job/postcode', write: {} }],
    of('after'),
  )
  expect(plain).toBe('a < b & c')
  expect(html).toBe('<p>a &lt; b &amp; c</p>')
  expect(missing).toHaveLength(1)
})
