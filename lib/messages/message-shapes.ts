/** The shapes of what the helper hears, as the schemas in messages.ts have them. */
import { controlKinds } from '../form/control-kinds.ts'
import { looks } from '../form/looks.ts'
import type { Shape } from './shape.ts'

export const address: Shape = { origin: 's', path: 's' }

const clues: Shape = {
  kind: ['word', ...controlKinds],
  name: 's',
  section: 's',
  attributes: ['names', 's'],
  placeholder: 's',
  options: ['list', 's'],
  position: 'n',
  'shadow?': ['list', 's'],
  'frame?': address,
}

const write: Shape = {
  'unit?': 's',
  'decimals?': 'n',
  'rounding?': ['word', 'half-up', 'half-even'],
  'grouping?': ['word', '', ',', '.', ' ', "'"],
  'mark?': ['word', '.', ','],
  'date?': 's',
  'choices?': ['names', 's'],
}

const source: Shape = [
  'any',
  { from: ['word', 'item'], item: 's', write },
  { from: ['word', 'text'], text: 's' },
  { from: ['word', 'words'], parts: ['list', ['any', { text: 's' }, { item: 's', write }]] },
  { from: ['word', 'file'], name: 's', type: 's', 'text?': 's', 'bytes?': 's', 'item?': 's' },
]

export const map: Shape = {
  id: 's',
  name: 's',
  version: 'n',
  created: 's',
  updated: 's',
  address,
  'further?': ['list', address],
  bindings: ['list', { id: 's', control: clues, source, 'step?': 'n' }],
}

const item = (kind: string, rest: Record<string, Shape>): Shape => ({
  kind: ['word', kind],
  label: 's',
  group: 's',
  ...rest,
})

export const material: Shape = {
  job: { id: 's', name: 's', 'readings?': 's' },
  items: [
    'names',
    [
      'any',
      item('quantity', { value: 'n', unit: 's', decimals: 'n', 'limit?': 'n', 'empty?': 'b' }),
      item('text', { text: 's' }),
      item('date', { iso: 's' }),
      item('choice', { value: 's', options: ['list', { value: 's', label: 's' }], 'why?': 's' }),
    ],
  ],
  'files?': ['names', { group: 's', name: 's', type: 's', 'bytes?': 's', 'note?': 's' }],
}

export const image: Shape = {
  key: 's',
  clues,
  shown: 's',
  empty: 'b',
  complaint: 's',
  attributes: ['list', ['row', 's', 's']],
}

const theme: Shape = ['word', 'system', 'light', 'dark', 'contrast']

export const mapShape: Shape = { type: ['word', 'map'], material, 'map?': map, 'theme?': theme }
export const planShape: Shape = { type: ['word', 'plan'], material, map, 'theme?': theme }
export const frameShape: Shape = { type: ['word', 'frame'], frame: 'n', address, images: ['list', image] }
export const writeShape: Shape = { type: ['word', 'write'], key: 's', text: 's' }
export const marksShape: Shape = {
  type: ['word', 'marks'],
  pick: 'b',
  marks: ['list', { key: 's', look: ['word', ...looks], tag: 's' }],
}
export const pickedShape: Shape = { type: ['word', 'picked'], frame: 'n', key: 's' }
export const endShape: Shape = { type: ['word', 'end'] }

/** What the background answers. */
export const answerShape: Shape = [
  'any',
  { ok: ['word', false], message: 's' },
  {
    ok: ['word', true],
    'entry?': 'n',
    'map?': { id: 's', version: 'n' },
    'written?': { 'reason?': 's', 'held?': 'b' },
    'token?': 's',
    'suggested?': ['list', ['list', { item: 's', score: 'n', reason: 's' }]],
  },
]
