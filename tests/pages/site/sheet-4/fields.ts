/** Sheet 4 of a permit: which fields, under which legends. */
import { options, type Section } from '../field.ts'

export const sections: readonly Section[] = [
  {
    legend: 'Permit and building',
    fields: [
      { name: 'permit', label: 'Permit number', kind: 'text', value: 'MB-2025-1183' },
      { name: 'street', label: 'Site address', kind: 'text' },
      { name: 'town', label: 'City or town', kind: 'text' },
      { name: 'builder', label: 'Builder', kind: 'text' },
      { name: 'floorArea', label: 'Conditioned floor area, ft²', kind: 'masked' },
      { name: 'volume', label: 'Volume, ft³', kind: 'masked' },
      {
        name: 'zone',
        label: 'Climate zone',
        kind: 'select',
        options: Array.from({ length: 9 }, (_, zone) => ({ value: `cz${zone}`, label: `Zone ${zone}` })),
      },
    ],
  },
  {
    legend: 'Testing',
    fields: [
      { name: 'company', label: 'Testing company', kind: 'text' },
      { name: 'tester', label: 'Name of tester', kind: 'text' },
      { name: 'licence', label: 'Licence number', kind: 'text' },
      { name: 'licenceExpiry', label: 'Licence valid until', kind: 'date' },
    ],
  },
  {
    legend: 'Enclosure, test after work',
    fields: [
      { name: 'date', label: 'Test date', kind: 'date' },
      {
        name: 'method',
        label: 'Test procedure',
        kind: 'select',
        options: options(['one', 'One-point'], ['e779', 'ASTM E779'], ['iso', 'ISO 9972']),
      },
      {
        name: 'direction',
        label: 'Direction',
        kind: 'radio',
        options: options(['d', 'Depressurize'], ['p', 'Pressurize']),
      },
      { name: 'cfm50', label: 'CFM50', kind: 'masked', hint: 'Digits only.' },
      { name: 'ach50', label: 'ACH50', kind: 'number', step: '0.01' },
      { name: 'ela', label: 'Effective leakage area at 4 Pa, in²', kind: 'number', step: '0.1' },
      { name: 'indoor', label: 'Indoor temperature, °F', kind: 'masked' },
      { name: 'outdoor', label: 'Outdoor temperature, °F', kind: 'masked' },
      { name: 'result', label: 'Result', kind: 'radio', options: options(['y', 'Pass'], ['n', 'Fail']) },
    ],
  },
  {
    legend: 'Ducts, system 1',
    fields: [
      {
        name: 'ductLeakage',
        label: 'Leakage tested',
        kind: 'radio',
        options: options(['t', 'Total'], ['o', 'To outside']),
      },
      {
        name: 'ductStage',
        label: 'Stage',
        kind: 'select',
        options: options(['r', 'Rough-in'], ['rn', 'Rough-in without air handler'], ['f', 'Final'], ['e', 'Existing']),
      },
      { name: 'cfm25', label: 'Duct leakage, CFM at 25 Pa', kind: 'masked' },
      { name: 'cfm25PerArea', label: 'CFM25 per 100 ft²', kind: 'number', step: '0.01' },
      { name: 'ventilation', label: 'Mechanical ventilation present', kind: 'checkbox' },
      { name: 'remarks', label: 'Remarks', kind: 'textarea' },
    ],
  },
]

/** Left to the person who signs. */
export const signing: Section = {
  legend: 'Signature',
  fields: [
    { name: 'certify', label: 'I certify that the above is true', kind: 'checkbox' },
    { name: 'signature', label: 'Signature, full name', kind: 'text' },
  ],
}
