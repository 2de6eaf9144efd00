/** What is filled into the pages of component libraries and design systems, and what their own state must hold then. */
import type { FrameworkPage, PageField } from './pages.ts'

const field = (name: string, text: string, state: string, holds: unknown = text): PageField => ({
  name,
  text,
  state,
  holds,
})
const street = field('Street address', '14 Tannery Row', 'street')
const flow = field('CFM50', '1445', 'flow')
const flowAsNumber = field('CFM50', '1445', 'flow', 1445)
const isoDate = field('Test date', '2026-02-11', 'date')
const range = field('Range', 'middle range', 'range', 'b')
const result = field('Result', 'Fail', 'result')
const sealed = field('Attic sealed', 'checked', 'sealed', true)
const fan = field('Ventilation present', 'checked', 'fan', true)
const floors = field('Stories', '3', 'floors')
const floorsAsNumber = field('Stories', '3', 'floors', 3)
const places = field('Work locations', 'Attic; Rim joist', 'places', ['Attic', 'Rim joist'])
const comments = field('Comments', 'attic hatch weatherstripped', 'comments')

export const libraryPages: FrameworkPage[] = [
  {
    name: 'Material Web',
    entry: 'material-web/main.ts',
    fields: [street, flow, isoDate, range, field('Zone', 'Zone 5', 'zone', '5'), result, sealed, fan, floors, comments],
  },
  {
    name: 'Fluent UI web components',
    entry: 'fluent/main.ts',
    fields: [street, flow, field('Test date', '02/11/2026', 'date'), range, result, sealed, fan, floors, comments],
  },
  {
    name: 'mdui',
    entry: 'mdui/main.ts',
    fields: [street, flow, isoDate, range, result, sealed, fan, floors, comments],
  },
  {
    name: 'UI5 web components',
    entry: 'ui5/main.ts',
    fields: [street, flow, range, field('Town', 'Osier Bend', 'town'), result, sealed, fan],
  },
  {
    name: 'Shoelace, choices',
    entry: 'shoelace/main.ts',
    fields: [
      range,
      field('Work locations', 'Attic; Rim joist', 'places', ['attic', 'rim']),
      field('Result', 'Fail', 'result', 'fail'),
      sealed,
      fan,
      floors,
    ],
  },
  {
    name: 'Vuetify',
    entry: 'vuetify/main.ts',
    fields: [
      street,
      flowAsNumber,
      isoDate,
      range,
      field('Town', 'Osier Bend', 'town'),
      places,
      result,
      sealed,
      fan,
      field('Bedrooms', '3', 'rooms', 3),
      comments,
    ],
  },
  {
    name: 'Quasar',
    entry: 'quasar/main.ts',
    fields: [
      street,
      flowAsNumber,
      field('Test date', '02/11/2026', 'date'),
      field('Phone', '5550100442', 'phone'),
      range,
      places,
      result,
      sealed,
      fan,
      floorsAsNumber,
      comments,
    ],
  },
  {
    name: 'Base UI',
    entry: 'base-ui/main.tsx',
    fields: [street, flowAsNumber, range, field('Town', 'Osier Bend', 'town'), result, sealed, fan, floorsAsNumber],
  },
  {
    name: 'React Aria',
    entry: 'react-aria/main.tsx',
    fields: [
      isoDate,
      field('Date of permit', '2026-01-12', 'permit'),
      street,
      flowAsNumber,
      range,
      field('Town', 'Osier Bend', 'town'),
      result,
      sealed,
      fan,
      floorsAsNumber,
      comments,
    ],
  },
  {
    name: 'React Select',
    entry: 'react-select/main.tsx',
    fields: [range, field('Second range', 'middle range', 'fixed', 'b'), field('Town', 'Town 240', 'town'), places],
  },
  {
    name: 'Tom Select, Slim Select, Tagify, flatpickr, AutoNumeric',
    entry: 'widgets/main.ts',
    fields: [
      flowAsNumber,
      field('Volume', '15810', 'volume', 15810),
      field('Test date', '02/11/2026', 'date', '2026-02-11'),
      field('Date of permit', '2026-01-12', 'permit'),
      range,
      field('Work locations', 'Attic; Rim joist', 'places', ['attic', 'rim']),
      field('Zone', 'Zone 5', 'zone', ['5']),
      field('Tags input field', 'attic; hatch', 'words', ['attic', 'hatch']),
      field('Crew', 'North; South', 'crew', 'North,South'),
    ],
  },
  {
    name: 'Drawn by hand',
    entry: 'odd/main.ts',
    fields: [
      places,
      field('Crew', 'North; South', 'crew', ['North', 'South']),
      field('Notes for the office', 'attic hatch', 'notes'),
      field('Range', 'middle range', 'range'),
      field('Zone', 'Zone 5', 'zone'),
      field('Wind', 'light', 'wind'),
      fan,
      field('Permit', 'lc7-2026-0187', 'permit', 'LC7-2026-0187'),
      field('Cost', '450', 'cost', 450),
      street,
      field('Town', 'Osier Bend', 'town'),
      field('Sill sealed', 'checked', 'sill', true),
      field('Stage', 'Final', 'stage', 'final'),
      { ...field('1', '120', 'before'), section: 'Flow at 25 Pa Before' },
      { ...field('1', '80', 'after'), section: 'Flow at 25 Pa After' },
      field('Date of inspection', '02/11/2026', 'inspected'),
      field('Date sealed', '2026-02-10', 'sealed'),
      field('Date the home was tested', '2026-02-11', 'tested'),
      field('Date of invoice', '2026-01-15', 'invoiced'),
    ],
  },
]
