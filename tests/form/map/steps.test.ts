import { describe, expect, test } from 'vitest'
import { serves, spanning } from '../../../lib/form/map/address.ts'
import type { Control } from '../../../lib/form/page/controls.ts'
import type { Found } from '../../../lib/form/map/find.ts'
import type { Binding } from '../../../lib/form/schema.ts'
import { formMapSchema } from '../../../lib/form/schema.ts'
import { atStep, bindingsHere, stepFor } from '../../../lib/form/map/steps.ts'

const clues = {
  kind: 'text',
  name: '',
  section: '',
  attributes: {},
  placeholder: '',
  options: [],
  position: 0,
} as const
const binding = (id: string, step?: number): Binding => ({
  id,
  control: { ...clues, options: [] },
  source: { from: 'text', text: id },
  ...(step !== undefined && { step }),
})
const found: Found = { found: {} as Control }
const seen = (...ids: string[]): Map<string, Found> => new Map(ids.map((id) => [id, found]))

describe('a form in steps', () => {
  const three = [binding('a'), binding('b'), binding('c', 2), binding('d', 2), binding('e', 3)]

  test('the page shows the step of which most is there; the rest waits', () => {
    const { here, steps } = bindingsHere(three, seen('c'))
    expect(here.map(({ id }) => id)).toEqual(['c', 'd'])
    expect(steps).toEqual({ at: 2, of: 3, here: 2, all: 5 })
  })

  test('a map of one step is planned whole, whatever is missing', () => {
    const { here, steps } = bindingsHere([binding('a'), binding('b')], seen('a'))
    expect(here).toHaveLength(2)
    expect(steps).toBeUndefined()
  })

  test('a control bound on a page that shows nothing bound so far is of a new step', () => {
    expect(stepFor([], new Set())).toBe(1)
    expect(stepFor(three, new Set(['a']))).toBe(1)
    expect(stepFor(three, new Set())).toBe(4)
    expect(atStep(binding('x'), 1)).toEqual(binding('x'))
    expect(atStep(binding('x'), 2).step).toBe(2)
  })
})

test('a map kept before there were steps is still valid, and may come to span more addresses', () => {
  const old = formMapSchema.parse({
    id: 'm',
    name: 'Rebate',
    version: 1,
    created: '2026-01-01T00:00:00Z',
    updated: '2026-01-01T00:00:00Z',
    address: { origin: 'https://forms.larch.example', path: '/rebate/site' },
    bindings: [binding('a')],
  })
  const here = 'https://forms.larch.example/rebate/site'
  const next = 'https://forms.larch.example/rebate/test'
  expect(serves(old, here)).toBe(true)
  expect(serves(old, next)).toBe(false)
  expect(spanning(old, here)).toBe(old)
  expect(serves(spanning(old, next), next)).toBe(true)
})
