import { describe, expect, test } from 'vitest'
import { contentOf, fileOf, type FileSource, whyNoFile } from '../../../lib/form/fill/file.ts'
import type { Material } from '../../../lib/form/material.ts'
import { sourceWords, textOf } from '../../../lib/form/fill/text.ts'

const report = { name: 'report.pdf', type: 'application/pdf' }
const material: Material = {
  job: { id: 'j', name: '14 Tannery Row' },
  items: {
    'after/flow-50': { kind: 'quantity', label: 'CFM50', group: 'after', value: 754, unit: 'cfm', decimals: 0 },
  },
  files: {
    // Base 64 of “foobar”: RFC 4648, section 10.
    report: { group: '', ...report, bytes: 'Zm9vYmFy', note: '16 kB' },
    'after/report': { group: 'after', ...report },
    'before/report': { group: 'before', ...report, bytes: 'Zm9v!' },
  },
}
const from = (rest: Partial<FileSource>): FileSource => ({ from: 'file', ...report, ...rest })
const into = (source: FileSource) => textOf(source, material, { kind: 'file', options: [] })

describe('a report of the material', () => {
  test('goes into the file under the name of the binding, with what to know of it', async () => {
    const source = from({ name: 'Tannery Row.pdf', item: 'report' })
    expect(into(source)).toEqual({ text: 'Tannery Row.pdf', note: '16 kB' })
    const file = fileOf(contentOf(source, material))
    expect([file.name, file.type, await file.text()]).toEqual(['Tannery Row.pdf', 'application/pdf', 'foobar'])
  })

  test.each([
    ['after/report', 'The calculator makes this report: open it from the toolbar, then choose Fill this page.'],
    ['final/report', 'The job has no test for this report: add the test, or bind another file.'],
    ['constructor', 'The job has no test for this report: add the test, or bind another file.'],
    ['before/report', 'The file in the form map is damaged: choose it again.'],
  ])('%s is refused in words, and no other file put in its place', (item, refused) => {
    expect(into(from({ item }))).toEqual({ refused })
    expect(whyNoFile(from({ item }), material)).toBe(refused)
  })

  test('goes into a file control only', () => {
    expect(textOf(from({ item: 'report' }), material, { kind: 'text', options: [] })).toHaveProperty('refused')
  })

  test('is named in the plan by its test', () => {
    expect(sourceWords(from({ item: 'report' }), material)).toBe('report of all tests')
    expect(sourceWords(from({ item: 'duct system 1/report' }), material)).toBe('report of the test “duct system 1”')
  })
})

test('without an item, text or bytes the file is a table of the figures', async () => {
  expect(await fileOf(contentOf(from({ name: 'figures.csv', type: 'text/csv' }), material)).text()).toBe(
    'group,item,value,unit\r\nafter,CFM50,754,cfm\r\n',
  )
})
