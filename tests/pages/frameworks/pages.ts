/** What is filled into each page, and what the page itself must hold afterwards. */
import { libraryPages } from './library-pages.ts'

export interface PageField {
  /** Name of the control as the page shows it. */
  name: string
  text: string
  /** Key of the page's own state. */
  state: string
  holds: unknown
  /** The page cannot take the text as it is: the outcome must say so. */
  told?: true
  /** Where several controls have that name: the heading above the control that is meant. */
  section?: string
  /** The job's figures go in as a file of this name; what the page holds of it begins with `holds`. */
  file?: true
  /** Step of the page that shows the control, where there are several. */
  step?: number
}

export interface FrameworkPage {
  name: string
  entry: string
  fields: PageField[]
  /** Keys of the page's state that follow from the fields: whether all is valid, the other parts of a date. */
  follows?: string[]
}

const field = (name: string, text: string, state: string, holds: unknown = text): PageField => ({
  name,
  text,
  state,
  holds,
})
const street = field('Street address', '14 Tannery Row', 'street')
const flow = field('CFM50', '1445', 'flow', 1445)
const isoDate = field('Test date', '2026-02-11', 'date')
const shownDate = field('Test date', '02/11/2026', 'date', '2026-02-11')
const range = field('Range', 'middle', 'range', 'b')
const rangeInWords = field('Range', 'middle range', 'range', 'b')
const result = field('Result', 'Fail', 'result')
const sealed = field('Attic sealed', 'checked', 'sealed', true)
const fan = field('Ventilation present', 'checked', 'fan', true)
const floors = field('Stories', '3', 'floors', 3)
const comments = field('Comments', 'attic hatch weatherstripped', 'comments')

export const pages: FrameworkPage[] = [
  {
    name: 'React, controlled',
    entry: '../controls/controlled.tsx',
    fields: [
      street,
      field('CFM50', '1445', 'flow'),
      isoDate,
      comments,
      range,
      result,
      sealed,
      { ...field('Digits only', '14a', 'digits', '14'), told: true },
      { ...field('Fixed', 'other', 'fixed', 'kept'), told: true },
    ],
  },
  {
    name: 'React Hook Form',
    entry: 'react-hook-form/main.tsx',
    follows: ['valid'],
    fields: [
      street,
      flow,
      isoDate,
      range,
      field('Work locations', 'Attic; Rim joist', 'places', ['attic', 'rim']),
      result,
      sealed,
      comments,
    ],
  },
  {
    name: 'MUI',
    entry: 'mui/main.tsx',
    fields: [
      street,
      field('CFM50', '1445', 'flow'),
      isoDate,
      rangeInWords,
      field('Town', 'Osier Bend', 'town'),
      field('Crew', 'South', 'crew'),
      field('Work locations', 'Rim joist; Attic', 'places', ['Rim joist', 'Attic']),
      field('Hours', 'Noon; Evening', 'hours', ['Noon', 'Evening']),
      field('Result', 'Fail', 'result', 'fail'),
      sealed,
      fan,
      floors,
    ],
  },
  {
    name: 'Ant Design',
    entry: 'antd/main.tsx',
    fields: [
      street,
      flow,
      shownDate,
      rangeInWords,
      field('Work locations', 'Attic; Rim joist', 'places', ['Attic', 'Rim joist']),
      field('Zone', 'Zone 240', 'zone', 240),
      result,
      sealed,
      fan,
      floors,
      comments,
    ],
  },
  {
    name: 'Vue',
    entry: 'vue/main.ts',
    fields: [
      street,
      flow,
      isoDate,
      field('Range', 'middle', 'range'),
      field('Work locations', 'Attic; Rim joist', 'places', ['Attic', 'Rim joist']),
      result,
      sealed,
      field('Stories', '3', 'floors'),
      comments,
    ],
  },
  {
    name: 'PrimeVue',
    entry: 'primevue/main.ts',
    fields: [
      street,
      flow,
      shownDate,
      field('Range', 'middle range', 'range'),
      field('Work locations', 'Attic; Rim joist', 'places', ['Attic', 'Rim joist']),
      result,
      sealed,
      fan,
      floors,
      comments,
    ],
  },
  {
    name: 'Angular Material',
    entry: 'angular/main.ts',
    fields: [
      street,
      flow,
      field('Test date', '2/11/2026', 'date', '2026-02-11'),
      rangeInWords,
      field('Result', 'Fail', 'result', 'fail'),
      sealed,
      fan,
      floors,
      comments,
    ],
  },
  {
    name: 'Svelte',
    entry: 'svelte/main.ts',
    fields: [
      street,
      flow,
      isoDate,
      range,
      field('Crawl space', 'checked', 'places', ['Crawl space']),
      result,
      sealed,
      floors,
      comments,
    ],
  },
  {
    name: 'jQuery, Select2, Inputmask',
    entry: 'jquery/main.ts',
    fields: [
      street,
      { ...flow, holds: '1,445' },
      field('Test date', '02/11/2026', 'date'),
      field('Phone', '5550100442', 'phone', '(555) 010-0442'),
      rangeInWords,
      field('Town', 'Town 37', 'town', '37'),
      sealed,
    ],
  },
  {
    name: 'Masks without a library',
    entry: 'masked/main.ts',
    fields: [
      { ...flow, holds: '1,445' },
      field('Test date', '02/11/2026', 'date'),
      field('Phone', '5550100442', 'phone', '(555) 010-0442'),
      field('Volume', '15810', 'volume'),
      { ...field('Licence', '0442', 'licence', ''), told: true },
      { ...field('ACH50', '5.48', 'ach', '5.5'), told: true },
      { ...field('Temperature', '148', 'temperature', '120'), told: true },
    ],
  },
  {
    name: 'Mail: chips, Quill, ProseMirror',
    entry: 'compose/main.ts',
    fields: [
      field('To', 'Ines Halvorsen; Larch County', 'recipients', ['Ines Halvorsen', 'Larch County']),
      field('Subject', 'Air leakage of 14 Tannery Row', 'subject'),
      field('Message', 'CFM50 is 1445.\nACH50 is 5.48.', 'plain', 'Dear all,\n\nCFM50 is 1445.\n\nACH50 is 5.48.'),
      field('Note', 'CFM50 is 1445.', 'quill', 'Results below.\nCFM50 is 1445.\n'),
      field('Report', 'CFM50 is 1445.', 'prose', 'CFM50 is 1445.'),
    ],
  },
  {
    name: 'ARIA patterns',
    entry: 'aria/main.ts',
    follows: ['bm', 'by'],
    fields: [
      field('Range', 'middle range', 'range'),
      field('Town', 'Larch Falls', 'town'),
      field('Crew', 'Crew 240', 'crew'),
      field('Work locations', 'Crawl space; Rim joist', 'places', ['Crawl space', 'Rim joist']),
      result,
      sealed,
      fan,
      field('Windy', 'checked', 'wind', true),
      field('Ducts tested', 'checked', 'covered', true),
      floors,
      field('Bedrooms', '3', 'rooms', 3),
      field('Date of permit', '2026-01-12', 'bd', '12'),
      field('Date of test', '2026-02-11', 'when'),
      field('Time of test', '14:05', 'time'),
      field('Month of invoice', '2026-02', 'invoice'),
      field('Started', '2026-02-11T14:05', 'started'),
      {
        ...field('Report', 'figures.csv', 'report', 'figures.csv text/csv group,item,value,unit\r\nbuilding,'),
        file: true,
      },
    ],
  },
  ...libraryPages,
]
