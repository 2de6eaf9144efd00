/** Form LC-7, part C: which fields, under which legends, and what the office's own check says of each. */

export interface Field {
  name: string
  label: string
  kind: 'text' | 'number' | 'date' | 'select' | 'radio' | 'checkbox' | 'textarea'
  hint?: string
  value?: string
  step?: string
  maxLength?: number
  options?: { value: string; label: string }[]
}

export interface Section {
  legend: string
  fields: Field[]
}

const procedures = [
  { value: 'SP', label: 'One point' },
  { value: 'MP', label: 'Several points, ASTM E779' },
  { value: 'ISO', label: 'Several points, ISO 9972' },
]

export function sections(application: string): Section[] {
  return [
    {
      legend: 'Property',
      fields: [
        { name: 'application', label: 'Application number', kind: 'text', value: application, maxLength: 12 },
        { name: 'street', label: 'Street address', kind: 'text' },
        { name: 'town', label: 'Town', kind: 'text' },
        { name: 'zip', label: 'ZIP code', kind: 'text', maxLength: 10 },
        { name: 'floor', label: 'Conditioned floor area (sq ft)', kind: 'number', value: '1800' },
        { name: 'volume', label: 'Conditioned volume (cu ft)', kind: 'number', hint: 'Whole cubic feet.' },
        {
          name: 'areaFrom',
          label: 'How areas were obtained',
          kind: 'select',
          options: [
            { value: 'P', label: 'From plans' },
            { value: 'M', label: 'Measured' },
            { value: 'E', label: 'Estimated' },
          ],
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
          options: [
            { value: 'pass', label: 'Pass' },
            { value: 'fail', label: 'Fail' },
          ],
        },
        {
          name: 'wind',
          label: 'Wind during the test',
          kind: 'select',
          options: [
            { value: '0', label: 'Calm' },
            { value: '1', label: 'Light' },
            { value: '2', label: 'Windy' },
          ],
        },
        { name: 'ventilation', label: 'Mechanical ventilation present', kind: 'checkbox' },
        { name: 'comments', label: 'Comments', kind: 'textarea', maxLength: 400 },
      ],
    },
  ]
}
