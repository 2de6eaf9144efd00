import type { Clues } from '../../lib/form/schema.ts'

export function fakeClues(overrides: Partial<Clues> = {}): Clues {
  return {
    kind: 'text',
    name: 'CFM at 50 Pa',
    section: 'After work',
    attributes: { name: 'cfm50_after' },
    placeholder: '',
    options: [],
    position: 0,
    ...overrides,
  }
}
