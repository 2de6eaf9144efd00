/** The reports that go into forms, read back with another library: PDF.js. */
import { extractText, getDocumentProxy } from 'unpdf'
import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import { withReports } from '../../lib/report/report-files.ts'
import { reportsIn } from '../../lib/extension/send-job.ts'
import { fakeMap } from '../book/fake.ts'
import '../book/fresh.ts'

const plain = material(demoJob(), [demoDevice()])

async function pagesOf(base64: string | undefined): Promise<string[]> {
  const document = await getDocumentProxy(new Uint8Array(Buffer.from(base64 ?? '', 'base64')), { verbosity: 0 })
  const { text } = await extractText(document)
  return text.map((page) => page.replaceAll(/\s+/g, ' '))
}

test('only the reports that the form map asks for are made, each of its own test', async () => {
  const source = { from: 'file', name: 'a.pdf', type: 'application/pdf', item: 'after/report' } as const
  const [binding] = fakeMap().bindings
  const wanted = reportsIn({ bindings: [...fakeMap().bindings, { ...binding!, id: 'report', source }] })
  expect([...wanted]).toEqual(['after/report'])
  const { files = {}, items } = await withReports(plain, demoJob(), [demoDevice()], wanted)
  expect(items).toBe(plain.items)
  expect(Object.keys(files).filter((key) => files[key]?.bytes !== undefined)).toEqual(['after/report'])
  const [page, ...more] = await pagesOf(files['after/report']?.bytes)
  expect(more).toEqual([])
  expect(page).toMatch(/14 Tannery Row, Marrowby.*Test: after.*Page 1 of 1/)
  expect(page).toMatch(/Made for a form; the entry of that fill keeps the SHA-256 of this file/)
  expect(files['after/report']?.note).toMatch(/^\d+ kB, made from the job as it stands$/)
})

test('the report of all tests has a page for each, in their order', async () => {
  const { files = {} } = await withReports(plain, demoJob(), [demoDevice()], new Set(['report', 'nothing']))
  const pages = await pagesOf(files['report']?.bytes)
  expect(pages.map((page) => /Test: (.+?)\..*?(Page \d of \d)/.exec(page)?.slice(1))).toEqual([
    ['before', 'Page 1 of 3'],
    ['after', 'Page 2 of 3'],
    ['duct system 1', 'Page 3 of 3'],
  ])
})
