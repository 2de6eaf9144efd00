/**
 * What each control of the two forms must hold for the demo job. The figures were worked outside this program, with a
 * desk calculator, from the demo readings:
 *
 * air at 620 ft, 68 °F 1.1778 kg/m3 and 41 °F 1.2414 (density of dry air by elevation and temperature, form of ASTM
 * E779, from memory). Flow through an orifice and mass balance: Q = indicated × sqrt(1.2041 / density at the device) ×
 * density indoors / outdoors when depressurizing, outdoors / indoors when pressurizing. Brought to the reference pressure
 * with n = 0.65 (ducts 0.6), then to standard air with viscosity (Roulet, Ventilation and Airflow in Buildings, eq. 4.15
 * and 4.17). Effective leakage area at 4 Pa with Cd 1 (ASTM E779, from memory).
 *
 * before: 49.6 Pa, 1501 cfm: 1445.18 cfm, × 60 / 15,810 ft3 = 5.485 per hour.
 * after: 50.3 Pa, 790 cfm: 753.72 cfm, 2.860 per hour, limit 3.0: pass; area 41.42 in2; reduction 47.85 %.
 * duct system 1: 25.3 Pa, 71 cfm, 66 °F outdoors: 70.78 cfm, × 100 / 1,860 ft2 = 3.81.
 */
import type { Field, Section } from '../pages/site/field.ts'

/** By test and name, as the popup must show them. */
export const figureAnswers: Record<string, Record<string, string>> = {
  before: { CFM50: '1445', ACH50: '5.48' },
  after: { CFM50: '754', ACH50: '2.86', 'ELA 4 Pa, Cd 1': '41.4' },
  'duct system 1': { CFM25: '71', 'CFM25/100 ft²': '3.8' },
}

/** How a person says what goes into a control that no proposal is made for. */
export type ByHand =
  /** Bound by a proposal already; the person says which option of the page stands for the value. */
  | { pick: 'option'; value: string; option: string }
  | { pick: 'item'; group: string; item: string }
  | { pick: 'text'; text: string }
  | { pick: 'words'; parts: ({ text: string } | { group: string; item: RegExp })[] }

export interface Answer {
  /** Name of the field in the page's model. */
  field: string
  /** What it must hold, in the words that a person sees. */
  holds: string
  byHand?: ByHand
}

const item = (group: string, label: string): { byHand: ByHand } => ({
  byHand: { pick: 'item', group, item: label },
})
const ticked: { byHand: ByHand } = { byHand: { pick: 'text', text: 'checked' } }

export const plainAnswers: readonly Answer[] = [
  { field: 'application', holds: 'LC7-2026-0187' },
  { field: 'street', holds: '14 Tannery Row' },
  { field: 'town', holds: 'Marrowby' },
  { field: 'floor', holds: '1860', ...item('building', 'floor area') },
  { field: 'volume', holds: '15810' },
  { field: 'areaFrom', holds: 'From plans', byHand: { pick: 'option', value: 'Plans', option: 'From plans' } },
  { field: 'company', holds: 'Bellwether Lane Testing' },
  { field: 'tester', holds: 'Ines Halvorsen' },
  { field: 'licence', holds: 'T-0442' },
  { field: 'c1.date', holds: '2026-01-12' },
  { field: 'c1.cfm50', holds: '1445' },
  { field: 'c1.procedure', holds: 'One-point', ...item('before', 'procedure') },
  { field: 'c2.date', holds: '2026-02-11' },
  { field: 'c2.cfm50', holds: '754' },
  { field: 'c2.procedure', holds: 'One-point', ...item('after', 'procedure') },
  { field: 'c2.ach50', holds: '2.86' },
  { field: 'reduction', holds: '47.8' },
  { field: 'result', holds: 'Pass' },
  { field: 'wind', holds: 'Calm' },
  { field: 'ventilation', holds: 'checked', ...ticked },
  {
    field: 'comments',
    holds: 'After work 754 cfm at 50 Pa, verdict: Pass.',
    byHand: {
      pick: 'words',
      parts: [
        { text: 'After work ' },
        { group: 'after', item: /^CFM50:/ },
        { text: ' cfm at 50 Pa, verdict: ' },
        { group: 'after', item: /^verdict/ },
        { text: '.' },
      ],
    },
  },
]

export const reactAnswers: readonly Answer[] = [
  { field: 'permit', holds: 'MB-2025-1183' },
  { field: 'street', holds: '14 Tannery Row', ...item('building', 'street address') },
  { field: 'town', holds: 'Marrowby' },
  { field: 'builder', holds: 'Old Tannery Joinery' },
  { field: 'floorArea', holds: '1860', ...item('building', 'floor area') },
  { field: 'volume', holds: '15810' },
  { field: 'zone', holds: 'Zone 5' },
  { field: 'company', holds: 'Bellwether Lane Testing' },
  { field: 'tester', holds: 'Ines Halvorsen' },
  { field: 'licence', holds: 'T-0442' },
  { field: 'licenceExpiry', holds: '2027-06-30', ...item('tester', 'licence expiry') },
  { field: 'date', holds: '2026-02-11' },
  { field: 'method', holds: 'One-point', ...item('after', 'procedure') },
  { field: 'direction', holds: 'Depressurize' },
  { field: 'cfm50', holds: '754' },
  { field: 'ach50', holds: '2.86' },
  { field: 'ela', holds: '41.4' },
  { field: 'indoor', holds: '68' },
  { field: 'outdoor', holds: '41' },
  { field: 'result', holds: 'Pass' },
  { field: 'ductLeakage', holds: 'Total', ...item('duct system 1', 'leakage') },
  { field: 'ductStage', holds: 'Final', ...item('duct system 1', 'stage') },
  { field: 'cfm25', holds: '71', ...item('duct system 1', 'CFM25') },
  { field: 'cfm25PerArea', holds: '3.81', ...item('duct system 1', 'CFM25/100 ft²') },
  { field: 'ventilation', holds: 'checked', ...ticked },
  {
    field: 'remarks',
    holds: 'ACH50 2.86, tested by Ines Halvorsen.',
    byHand: {
      pick: 'words',
      parts: [
        { text: 'ACH50 ' },
        { group: 'after', item: /^ACH50:/ },
        { text: ', tested by ' },
        { group: 'tester', item: /^tester/ },
        { text: '.' },
      ],
    },
  },
]

/** The field of that name in the model. */
export function fieldCalled(sections: readonly Section[], name: string): Field {
  for (const { fields } of sections) for (const field of fields) if (field.name === name) return field
  throw new Error(`No field is called ${name}.`)
}
