/** Filled forms are written as an addition to the file, read back by this project's reader and by two others. */
import { expect, test } from 'vitest'
import type { Field } from '../../lib/pdf/fields.ts'
import { combForm, longForm, plainForm, tableForm, twoPages } from './forms.ts'
import { open, save } from './opened.ts'
import { faults, remade, valuesIn, wordsIn } from './outside.ts'
import { rawForm, textField } from './raw.ts'

/** Something for each field, told from all others. */
function valueFor(field: Field, index: number): string {
  if (field.kind === 'tick') return field.widgets[0]!.on
  if (field.kind === 'radio') return field.widgets.at(-1)!.on
  if (field.kind === 'choice') return field.options.at(-1)!.value
  return `Rua ${index}é`
}

const forms = { plainForm, tableForm, combForm, twoPages, longForm }

test.each(Object.entries(forms))('%s: every field is read back, by three readers', async (_, make) => {
  const { bytes } = await make()
  const opened = await open(bytes)
  const wanted = new Map(opened.fields.map((field, index) => [field.name, valueFor(field, index)]))
  const saved = await save(opened, wanted)
  expect(saved.fields.filter(({ wanted: text, held, drawn }) => text !== held || drawn !== '')).toEqual([])
  expect(saved.fields).toHaveLength(opened.fields.length)
  // An addition: what was there stays byte for byte.
  expect(Buffer.compare(saved.bytes.subarray(0, bytes.length), bytes)).toBe(0)
  expect(faults(saved.bytes)).toBe('')
  const theirs = valuesIn(saved.bytes)
  const words = wordsIn(saved.bytes).replaceAll(/\s+/g, '')
  const wrong = opened.fields.flatMap((field) => {
    const text = wanted.get(field.name)!
    // The writer of these forms names the states of a radio by their place and keeps the export values in /Opt
    // (ISO 32000-1, 12.7.4.2.4).
    const state = field.kind === 'radio' ? field.widgets.findIndex(({ on }) => on === text) : text
    const held = field.kind === 'tick' || field.kind === 'radio' ? `/${state}` : text
    const drawn = field.kind !== 'text' || words.includes(text.replaceAll(' ', ''))
    return theirs.get(field.name) === held && drawn ? [] : [`${field.name}: ${theirs.get(field.name)}, drawn ${drawn}`]
  })
  expect(wrong).toEqual([])
  // The form is known again when it is filled, and what was filled in can be taken back.
  const again = await open(saved.bytes)
  expect(again.id).toBe(opened.id)
  const cleared = await save(
    again,
    new Map(again.fields.filter(({ kind }) => kind === 'text').map(({ name }) => [name, ''])),
  )
  expect(cleared.fields.filter(({ held, wanted: text }) => held !== text)).toEqual([])
})

test('a form packed by another program, and one that is encrypted, are filled alike', async () => {
  const { bytes } = await plainForm()
  for (const other of [
    remade(bytes, '--object-streams=generate', '--linearize'),
    remade(bytes, '--qdf', '--object-streams=disable'),
    remade(bytes, '--encrypt', '', 'owner', '256', '--'),
  ]) {
    const opened = await open(other)
    const saved = await save(opened, new Map([['Text1', '14 Tannery Row']]))
    expect(saved.fields.find(({ name }) => name === 'Text1')).toMatchObject({ held: '14 Tannery Row', drawn: '' })
    expect(faults(saved.bytes)).toBe('')
    expect(valuesIn(saved.bytes).get('Text1')).toBe('14 Tannery Row')
    expect(wordsIn(saved.bytes)).toContain('14 Tannery Row')
  }
})

test('a form that leaves the drawing to its viewer gets drawings, and still says so', async () => {
  const bytes = rawForm([textField('permit')], { form: '/NeedAppearances true ' })
  const saved = await save(await open(bytes), new Map([['permit', 'MB-2025-1183']]))
  expect(saved.fields).toEqual([{ name: 'permit', wanted: 'MB-2025-1183', held: 'MB-2025-1183', drawn: '' }])
  const text = Buffer.from(saved.bytes).toString('latin1')
  expect(text.match(/NeedAppearances true/g)).toHaveLength(1)
  expect(text.slice(bytes.length)).toMatch(/\/AP <</)
  expect(Buffer.compare(saved.bytes.subarray(0, bytes.length), bytes)).toBe(0)
})

test('letters that the form’s font lacks are told', async () => {
  const saved = await save(await open(rawForm([textField('tester')])), new Map([['tester', 'Čeněk Žižka']]))
  expect(saved.fields[0]).toMatchObject({ held: 'Čeněk Žižka', drawn: expect.stringMatching(/lack some of these/) })
  expect(valuesIn(saved.bytes).get('tester')).toBe('Čeněk Žižka')
})

test('a field that may only be read is left as it is', async () => {
  const bytes = rawForm([textField('permit', 700, '/Ff 1 /V (fixed) ')])
  const saved = await save(await open(bytes), new Map([['permit', 'other']]))
  expect(valuesIn(saved.bytes).get('permit')).toBe('fixed')
  expect(saved.fields[0]).toMatchObject({ wanted: 'other', held: 'fixed' })
})

/** Half as wide as high: about what the letters of Helvetica are. */
const measure = (text: string): number => 0.5 * text.length

test('a text longer than its field shows is told, in one line and in several', async () => {
  const fields = [textField('short', 700), textField('long', 600), textField('several', 400, '/Ff 4096 ')]
  const opened = await open(rawForm(fields))
  const values = new Map([
    ['short', 'x'.repeat(34)],
    ['long', 'x'.repeat(37)],
    ['several', 'x '.repeat(60)],
  ])
  const saved = await save(opened, values, measure)
  expect(saved.fields.map(({ drawn }) => /cut off/.test(drawn))).toEqual([false, true, true])
})
