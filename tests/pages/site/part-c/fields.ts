/** Form LC-7, part C: which fields, under which legends, and what the office's own check says of each. */

import { options, type Section } from '../field.ts'

const procedures = options(
  ['SP', 'One-point'],
  ['MP', 'Several points, ASTM E779'],
  ['ISO', 'Several points, ISO 9972'],
)

export function sections(application: string): Section[] {
  return [
    {
      legend: 'Property',
      fields: [
        { name: 'application', label: 'Application number', kind: 'text', value: application, maxLength: 13 },
        { name: 'street', label: 'Street address', kind: 'text' },
        { name: 'town', label: 'Town', kind: 'text' },
        { name: 'zip', label: 'ZIP code', kind: 'text', maxLength: 10 },
        { name: 'floor', label: 'Conditioned floor area (sq ft)', kind: 'number', value: '1800' },
        { name: 'volume', label: 'Conditioned volume (cu ft)', kind: 'number', hint: 'Whole cubic feet.' },
        {
          name: 'areaFrom',
          label: 'How areas were obtained',
          kind: 'select',
          options: options(['P', 'From plans'], ['M', 'Measured'], ['E', 'Estimated']),
        },
      ],
    },
    {
      legend: 'Contractor and tester',
      fields: [
        { name: 'company', label: 'Testing company', kind: 'text' },
        { name: 'tester', label: 'Tester, printed name', kind: 'text' },
        { name: 'licence', label: 'Licence number', kind: 'text', hint: 'As on the tester’s card.' },
      ],
    },
    {
      legend: 'C1. Before work',
      fields: [
        { name: 'c1.date', label: 'Date of test', kind: 'date' },
        { name: 'c1.cfm50', label: 'CFM at 50 Pa', kind: 'number', hint: 'Whole number, 100 to 25000.' },
        { name: 'c1.procedure', label: 'Test procedure', kind: 'select', options: procedures },
      ],
    },
    {
      legend: 'C2. After work',
      fields: [
        { name: 'c2.date', label: 'Date of test', kind: 'date' },
        { name: 'c2.cfm50', label: 'CFM at 50 Pa', kind: 'number', hint: 'Whole number, 100 to 25000.' },
        { name: 'c2.procedure', label: 'Test procedure', kind: 'select', options: procedures },
        { name: 'c2.ach50', label: 'Air changes per hour at 50 Pa', kind: 'number', step: '0.01' },
        { name: 'reduction', label: 'Reduction (%)', kind: 'number', step: '0.1' },
        {
          name: 'result',
          label: 'Result',
          kind: 'radio',
          options: options(['pass', 'Pass'], ['fail', 'Fail']),
        },
        {
          name: 'wind',
          label: 'Wind during the test',
          kind: 'select',
          options: options(['0', 'Calm'], ['1', 'Light'], ['2', 'Windy']),
        },
        { name: 'ventilation', label: 'Mechanical ventilation present', kind: 'checkbox' },
        { name: 'comments', label: 'Comments', kind: 'textarea', maxLength: 400 },
      ],
    },
  ]
}
