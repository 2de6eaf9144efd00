/** The shapes of what the dock and the helper's script in the page say to each other; each side checks what it hears. */
import type { FromDock, ToDock } from './dock-messages.ts'
import { looks } from '../form/looks.ts'
import { image, map, material } from './message-shapes.ts'
import type { Shape } from './shape.ts'

const key = { key: 's' } as const
const side: Shape = ['word', 'left', 'right']
const texts: Shape = ['list', 's']

/** What the script in the page takes from the dock. */
export const fromDock: { [T in FromDock['type']]: Shape } = {
  place: { height: 'n', wide: 'b', side },
  close: {},
  raise: {},
  leave: { binding: 's', leave: 'b' },
  choose: { binding: 's', candidate: 'n' },
  point: { binding: 's', 'candidate?': 'n' },
  bring: { to: 's' },
  fill: { number: 'n', 'seen?': 'b' },
  stop: {},
  undo: {},
  note: {},
  again: {},
  step: {},
  'to-map': {},
  'ask-frame': { origin: 's' },
  marks: { marks: ['list', { ...key, look: ['word', ...looks], tag: 's' }] },
  mapped: { map },
  'to-plan': { map },
}

const steps: Shape = { at: 'n', of: 'n', here: 'n', all: 'n' }
const planLine: Shape = {
  binding: 's',
  control: 's',
  section: 's',
  source: 's',
  text: 's',
  now: 's',
  state: ['word', 'to enter', 'will replace', 'already there', 'not found', 'ambiguous', 'refused'],
  note: 's',
}
const receiptLine: Shape = {
  binding: 's',
  control: 's',
  section: 's',
  source: 's',
  intended: 's',
  before: 's',
  readBack: 's',
  outcome: ['word', 'entered', 'differs', 'not found', 'refused', 'ambiguous'],
  note: 's',
}
const control: Shape = { ...(image as object), element: 's' }

/** What the dock takes from the script in the page. */
export const toDock: { [T in ToDock['type']]: Shape } = {
  open: { view: 'n', theme: ['word', 'system', 'light', 'dark', 'contrast'], side },
  room: { sheet: 'b' },
  plan: {
    number: 'n',
    view: 'n',
    undo: 'b',
    job: 's',
    lines: ['list', planLine],
    left: texts,
    candidates: ['list', { binding: 's', index: 'n', label: 's' }],
    placed: texts,
    'steps?': steps,
    leftToYou: texts,
    'looking?': 'n',
    more: 'b',
    origins: texts,
    noting: 'b',
    problem: 's',
    changed: 'b',
    covered: 'b',
    outdated: 'b',
  },
  filling: { view: 'n', total: 'n' },
  line: { line: receiptLine },
  receipt: {
    view: 'n',
    kind: ['word', 'fill', 'undo'],
    lines: ['list', receiptLine],
    placed: texts,
    problem: 's',
    lacks: 'b',
    unheard: 's',
    'entry?': 'n',
    'steps?': steps,
    'further?': steps,
  },
  map: { view: 'n', material, 'map?': map, href: 's', heading: 's' },
  page: {
    controls: ['list', { ...(control as object), 'parts?': ['list', control] }],
    leftOut: ['list', { ...key, name: 's', reason: 's', detail: 's' }],
    more: 'b',
    origins: texts,
  },
  picked: key,
  hovered: key,
  trouble: { words: 's' },
}
