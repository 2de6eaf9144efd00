/** What the fields of forms are called, against what a person would call them. */
import { expect, test } from 'vitest'
import { combForm, longForm, plainForm, tableForm, twoPages } from './forms.ts'
import { open } from './opened.ts'

test.each([plainForm, tableForm, combForm, twoPages, longForm])('%o', async (make) => {
  const form = await make()
  const { called } = await open(form.bytes)
  const found = Object.fromEntries([...called].map(([name, { name: said, section }]) => [name, [said, section]]))
  expect(found).toEqual(form.called)
})

test('options of a radio are called by the words behind them, whatever the file calls them', async () => {
  const { called } = await open((await plainForm()).bytes)
  expect(called.get('Group1')?.options).toEqual(['Pass', 'Fail'])
})

test('a form is the same one when it is filled, under another name, or saved by another program; another heading is another form', async () => {
  const one = await open((await plainForm()).bytes)
  const again = await open((await plainForm()).bytes)
  expect(again.id).toBe(one.id)
  expect((await open((await tableForm()).bytes)).id).not.toBe(one.id)
})
