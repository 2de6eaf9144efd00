/** What is filled into the pages of this folder, and what the pages themselves must hold afterwards. */
import type { PageField } from '../frameworks/pages.ts'

export interface PlacePage {
  name: string
  path: string
  fields: PageField[]
  /** Steps that the page shows one after the other, and what leads on. */
  next?: string
  /** The form stands in a frame of another origin, which the person has allowed. */
  apart?: true
}

const text = (name: string, value: string, state: string, section?: string): PageField => ({
  name,
  text: value,
  state,
  holds: value,
  ...(section !== undefined && { section }),
})

const street = (section?: string) => text('Street address', '14 Tannery Row', 'street', section)
const volume = text('Conditioned volume (cu ft)', '15810', 'volume')
const licence = text('Licence number', 'T-0442', 'licence')

const sides = (date: string, sections: readonly [before: string, after: string]): PageField[] => [
  text(date, '2026-01-12', 'before date', sections[0]),
  text(date, '2026-02-11', 'after date', sections[1]),
  text('CFM50', '1445', 'before cfm50', sections[0]),
  text('CFM50', '754', 'after cfm50', sections[1]),
  text('ACH50', '5.5', 'before ach50', sections[0]),
  text('ACH50', '2.9', 'after ach50', sections[1]),
]

const inFrames: PageField[] = [
  street(),
  volume,
  text('Test date', '2026-02-11', 'after date'),
  text('CFM50', '754', 'after cfm50'),
  text('Range', 'middle', 'after range'),
  text('Result', 'Pass', 'result'),
]

export const placePages: PlacePage[] = [
  {
    name: 'Tables without labels',
    path: 'tables.html',
    fields: [
      street(),
      text('Permit number', 'MB-2025-1183', 'permit'),
      text('Climate zone', '5', 'zone'),
      text('Conditioned floor area (sq ft)', '1860', 'area'),
      volume,
      ...sides('Test date', ['Before work', 'After work']),
      text('Tester, printed name', 'Ines Halvorsen', 'tester'),
      licence,
      text('Comments', 'attic hatch weatherstripped', 'comments'),
    ],
  },
  {
    name: 'The same labels twice, rows of systems',
    path: 'legends.html',
    fields: [
      ...sides('Date of test', ['C1. Before work', 'C2. After work']),
      text('Range', 'wide', 'before range', 'C1. Before work'),
      text('Range', 'middle', 'after range', 'C2. After work'),
      ...['1', '2', '3'].flatMap((at) => [
        text(`Duct system ${at}`, `7${at}`, `duct ${at} flow`, 'CFM25, total'),
        text(`Duct system ${at}`, `62${at}`, `duct ${at} area`, 'Floor area served (sq ft)'),
      ]),
      text('Sum of the rest', '12', 'duct rest flow', 'CFM25, total'),
      text('Sum of the rest', '140', 'duct rest area', 'Floor area served (sq ft)'),
    ],
  },
  {
    name: 'Government design system',
    path: 'agency.html',
    fields: [
      text('Address line 1', '14 Tannery Row', 'street'),
      text('Town or city', 'Marrowby', 'town'),
      text('Postcode', '00142', 'postcode'),
      text('Permit number', 'MB-2025-1183', 'permit'),
      text('Conditioned volume, in cubic feet', '15810', 'volume'),
      { ...text('How did you pressurize the building?', 'Depressurization', 'way'), holds: 'depressurize' },
      text('Air leakage at 50 pascals, in cubic feet per minute', '754', 'cfm50'),
      text('Air changes per hour at 50 pascals', '2.86', 'ach50'),
      text('Stage of construction', 'Final', 'stage'),
      text('Full name', 'Ines Halvorsen', 'tester'),
      licence,
      text('Can you provide more detail?', 'attic hatch weatherstripped', 'detail'),
    ],
  },
  {
    name: 'Lit, nested open and closed shadow roots',
    path: 'shadow.html',
    fields: [
      street(),
      volume,
      text('CFM50', '1445', 'before cfm50', 'Before work'),
      text('Test date', '2026-01-12', 'before date', 'Before work'),
      text('CFM50', '754', 'after cfm50', 'After work'),
      text('Test date', '2026-02-11', 'after date', 'After work'),
      text('Range', 'middle', 'after range', 'After work'),
    ],
  },
  {
    name: 'Web components (Shoelace)',
    path: 'components.html',
    fields: [
      street(),
      text('Conditioned floor area (sq ft)', '1860', 'area'),
      volume,
      text('Test date', '2026-02-11', 'date'),
      text('CFM50', '754', 'cfm50'),
      text('ACH50', '2.86', 'ach50'),
      licence,
      text('Comments', 'attic hatch weatherstripped', 'notes'),
    ],
  },
  {
    name: 'Postback: drawn with new ids after each change',
    path: 'postback.html',
    fields: [
      street(),
      text('Permit number', 'MB-2025-1183', 'permit'),
      volume,
      ...sides('', ['Before work', 'After work']).slice(2),
      text('Stage', 'Rough-in', 'stage'),
    ],
  },
  {
    name: 'Wizard of three steps',
    path: 'wizard.html',
    next: '#next',
    fields: [
      street(),
      text('City', 'Marrowby', 'town'),
      text('Permit number', 'MB-2025-1183', 'permit'),
      text('Conditioned floor area (sq ft)', '1860', 'area'),
      volume,
      { ...text('Test date', '2026-02-11', 'date'), step: 2 },
      { ...text('CFM50', '754', 'cfm50'), step: 2 },
      { ...text('ACH50', '2.86', 'ach50'), step: 2 },
      { ...text('Outdoor temperature (°F)', '41', 'outdoor'), step: 2 },
      { ...text('Testing company', 'Bellwether Lane Testing', 'company'), step: 3 },
      { ...text('Tester, printed name', 'Ines Halvorsen', 'tester'), step: 3 },
      { ...licence, step: 3 },
      { ...text('Phone', '(555) 010-0442', 'phone'), step: 3 },
      { ...text('Comments', 'attic hatch weatherstripped', 'notes'), step: 3 },
    ],
  },
  {
    name: 'Frames in frames of one origin',
    path: 'frames.html',
    fields: [text('Application number', 'LC7-2026-0187', 'program'), ...inFrames],
  },
  {
    name: 'A frame of another origin',
    path: 'embedding.html',
    apart: true,
    fields: [text('Application number', 'LC7-2026-0187', 'program'), ...inFrames],
  },
]
