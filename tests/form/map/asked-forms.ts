/**
 * Forms in words, as many as there are ways to ask: invented, with wordings of public submittal forms and common practice.
 * Each field has the item it asks for, and the wordings that one year's form and the next may have for it.
 */
import type { Clues, ControlKind } from '../../../lib/form/schema.ts'

export interface AskedField {
  kind: ControlKind
  /** Wordings of one question, the first as it is mapped. */
  names: readonly string[]
  /** Key of the material; `test/…` where the page does not say of which test; empty for what a job does not hold. */
  item: string
  options?: readonly string[]
  attributes?: Readonly<Record<string, string>>
  placeholder?: string
}

export interface AskedForm {
  name: string
  sections: readonly { heading: string; fields: readonly AskedField[] }[]
}

const f = (kind: ControlKind, item: string, names: string, more: Partial<AskedField> = {}): AskedField => ({
  kind,
  item,
  names: names.split(' | '),
  ...more,
})
const list = (item: string, names: string, options: string): AskedField =>
  f('select', item, names, { options: ['Choose one', ...options.split(' | ')] })
const radios = (item: string, names: string, options: string): AskedField =>
  f('radio', item, names, { options: options.split(' | ') })

export const askedForms: readonly AskedForm[] = [
  {
    name: 'permit close-out, no headings',
    sections: [
      {
        heading: '',
        fields: [
          f('text', 'job/address', 'Address of tested home | Address of the tested house'),
          f('text', 'job/permit', 'Permit number | Permit ref. | Permit #'),
          f('text', 'job/builder', 'Builder of record | Builder'),
          f('date', 'test/date', 'Date the home was tested | Date the house was tested | Test date'),
          f('date', '', 'Permit date | Date of permit'),
          f('text', 'tester/name', 'Person who ran the test | Person who did the test'),
          f('text', 'tester/company', 'Testing agency | Testing firm'),
          f('text', 'tester/licence', 'Credential ID of tester | Credential number of tester'),
          f('number', 'job/floor-area', 'Conditioned floor area, ft² | Conditioned floor area (sq ft)'),
          f('number', 'job/volume', 'House volume (ft³) | Volume of the home, cu ft'),
          f('number', 'test/flow-50', 'CFM50 | CFM at 50 Pa'),
          f('number', 'test/air-changes-50', 'ACH50 | Air changes/hour at 50 Pa'),
          list('job/climate-zone', 'Energy code zone | Zone under the energy code', '1 | 2 | 3 | 4 | 5 | 6 | 7 | 8'),
          radios('test/verdict', 'Did the home pass? | Did the house pass?', 'Yes | No'),
          f('textarea', 'test/notes', 'Anything we should know? | Remarks'),
        ],
      },
    ],
  },
  {
    name: 'rebate, before and after',
    sections: [
      {
        heading: 'Where was the test done?',
        fields: [
          f('text', 'job/street', 'Street | Street and number'),
          f('text', 'job/unit', 'Apt. or unit | Unit or apt.'),
          f('text', 'job/town', 'Town | City or town'),
          f('text', 'job/state', 'State | State or territory'),
          f('text', 'job/postcode', 'ZIP | ZIP code'),
          f('number', 'job/floor-area', 'Heated floor space (sq ft) | Heated floor area (sq ft)'),
          f('number', 'job/volume', 'Heated air volume (cu ft) | Heated volume (cu ft)'),
          f('number', 'job/bedrooms', 'How many bedrooms? | Bedrooms'),
        ],
      },
      {
        heading: 'Account holder',
        fields: [
          f('text', '', 'Name | Full name'),
          f('text', '', 'Phone | Telephone'),
          f('text', '', 'E-mail | Email'),
          f('text', '', 'Mailing address | Postal address'),
        ],
      },
      {
        heading: 'Test-in',
        fields: [
          f('date', 'before/date', 'Date | Date of test'),
          f('number', 'before/flow-50', 'Blower door result, CFM50 | Result of the blower door, CFM at 50 Pa'),
          f('number', 'before/air-changes-50', 'Air changes per hour @50 | ACH at 50 pascals'),
          f('number', 'before/outdoor', 'Temperature outside, °F | Outside temperature, °F'),
        ],
      },
      {
        heading: 'Test-out',
        fields: [
          f('date', 'after/date', 'Date | Date of test'),
          f('number', 'after/flow-50', 'Blower door result, CFM50 | Result of the blower door, CFM at 50 Pa'),
          f('number', 'after/air-changes-50', 'Air changes per hour @50 | ACH at 50 pascals'),
          f('number', 'after/outdoor', 'Temperature outside, °F | Outside temperature, °F'),
        ],
      },
      {
        heading: 'Savings',
        fields: [
          f('number', 'before+after/reduction-percent', 'Leakage reduced by, % | Percent leakage reduced'),
          f('number', '', 'Rebate requested ($) | Amount of rebate'),
        ],
      },
      {
        heading: 'Technician',
        fields: [
          f('text', 'tester/name', 'Name | Full name'),
          f('text', 'tester/company', 'Employer | Company'),
          f('text', 'tester/licence', 'Cert. no. | Certificate no.'),
          f('text', 'tester/phone', 'Phone | Telephone'),
          f('text', 'tester/email', 'E-mail | Email'),
        ],
      },
    ],
  },
  {
    name: 'duct certificate',
    sections: [
      {
        heading: 'Project',
        fields: [
          f('text', 'job/address', 'Site location | Location of site'),
          f('text', 'job/permit', 'Building permit no. | Permit no. of the building'),
          f('text', 'job/program', 'Enrollment number | Enrolment no.'),
          f('text', 'job/builder', 'Contractor responsible | Responsible contractor'),
        ],
      },
      {
        heading: 'Duct leakage test',
        fields: [
          f('date', 'duct system 1/date', 'Tested on | Tested when'),
          radios('duct system 1/leakage', 'Measured | What was measured', 'Total leakage | Leakage to outdoors'),
          list('duct system 1/stage', 'When tested | At what stage', 'Rough-in | Post-construction'),
          f('number', 'duct system 1/duct-flow-25', 'Leakage at 25 Pa (cfm) | CFM25'),
          f('number', 'duct system 1/duct-flow-25-per-floor-area', 'cfm25 per 100 ft² | CFM25/100 sq ft'),
          f('number', 'duct system 1/air-handler-flow', 'System airflow (cfm) | Airflow of the system, cfm'),
          radios('duct system 1/verdict', 'Test outcome | Outcome of the test', 'Pass | Fail'),
        ],
      },
      {
        heading: 'Tested by',
        fields: [
          f('text', 'tester/name', 'Print name | Printed name'),
          f('text', 'tester/company', 'Firm | Company'),
          f('text', 'tester/licence', 'Number of certification | Certification number'),
          f('date', 'tester/licence-expiry', 'Valid until | Valid through'),
        ],
      },
    ],
  },
  {
    name: 'energy code compliance sheet',
    sections: [
      {
        heading: 'Building data',
        fields: [
          f('text', 'job/address', 'Property address | Address of property'),
          f('text', '', 'Owner of property | Property owner'),
          list('job/climate-zone', 'Zone of the site | Site zone', 'Zone 3 | Zone 4 | Zone 5 | Zone 6'),
          f('number', 'job/stories', 'Stories above grade | Floors above grade'),
          f('number', 'job/enclosure-area', 'Area of thermal envelope (ft²) | Thermal envelope area (ft²)'),
          list('job/area-source', 'Area taken from | Source of area', 'Plans | Measured on site | Estimated'),
        ],
      },
      {
        heading: 'Air leakage',
        fields: [
          list('test/direction', 'House was | The house was', 'Depressurized | Pressurized'),
          f('number', 'test/flow-50', 'Q50 (cfm) | Leakage at 50 Pa (cfm)'),
          f('number', 'test/air-changes-50', 'n50 | ACH50'),
          f('number', 'test/limit', 'Allowed maximum | Maximum allowed'),
          list('test/verdict', 'Compliance | Does it comply?', 'Compliant | Not compliant'),
          f('number', 'test/indoor', 'Inside temperature (°F) | Temp. inside (°F)'),
          f('number', 'test/outdoor', 'Outside temperature (°F) | Temp. outside (°F)'),
          list('test/wind', 'Wind conditions | Conditions of wind', 'Calm | Light | Strong'),
        ],
      },
      {
        heading: 'Equipment',
        fields: [
          f('text', 'test/device', 'Fan used | Fan'),
          f('text', 'test/device-serial', 'Fan serial no. | Serial no. of fan'),
          f('date', 'test/device-calibrated', 'Last calibrated | Calibrated on'),
          f('text', 'test/range', 'Fan configuration | Configuration of fan'),
        ],
      },
      {
        heading: 'Insulation',
        fields: [
          f('number', '', 'Attic R-value | R-value of attic'),
          f('number', '', 'Wall R-value | R-value of walls'),
          f('date', '', 'Date installed | Installed on'),
        ],
      },
    ],
  },
]

/** Forms whose wordings nobody looked at while the vocabulary was written. */
export const otherForms: readonly AskedForm[] = [
  {
    name: 'weatherization close-out',
    sections: [
      {
        heading: 'Dwelling',
        fields: [
          f('text', 'job/street', 'House number and street'),
          f('text', 'job/town', 'City'),
          f('text', 'job/postcode', 'Postal code'),
          f('text', 'job/program', 'Job number'),
          f('text', '', 'Client last name'),
          f('text', '', 'Client phone number'),
          f('number', 'job/floor-area', 'Square footage of living space'),
          f('number', 'job/volume', 'Conditioned volume in cubic feet'),
          f('number', 'job/stories', 'Number of stories'),
          f('number', '', 'Year of construction'),
        ],
      },
      {
        heading: 'Blower door, pre-weatherization',
        fields: [
          f('date', 'before/date', 'Date of reading'),
          f('number', 'before/flow-50', 'CFM @ 50 Pa'),
          f('number', 'before/baseline-mean', 'Baseline pressure (Pa)'),
          f('number', 'before/indoor', 'Indoor temp (F)'),
          f('number', 'before/outdoor', 'Outdoor temp (F)'),
        ],
      },
      {
        heading: 'Blower door, post-weatherization',
        fields: [
          f('date', 'after/date', 'Date of reading'),
          f('number', 'after/flow-50', 'CFM @ 50 Pa'),
          f('number', 'after/air-changes-50', 'Air changes @ 50 Pa'),
          f('number', 'before+after/reduction-percent', 'Percent reduction'),
          f('number', '', 'Target CFM50 of the work order'),
        ],
      },
      {
        heading: 'Work crew',
        fields: [
          f('text', '', 'Crew leader'),
          f('text', 'tester/name', 'Blower door operator'),
          f('textarea', 'after/notes', 'Notes on the test'),
        ],
      },
    ],
  },
  {
    name: 'county final inspection',
    sections: [
      {
        heading: 'Permit information',
        fields: [
          f('text', 'job/permit', 'Permit No.'),
          f('text', 'job/address', 'Project address'),
          f('text', 'job/builder', 'General contractor'),
          f('text', '', 'Mechanical contractor'),
          f('date', '', 'Permit issue date'),
          list('job/climate-zone', 'IECC climate zone', '3A | 4A | 5A | 6A'),
        ],
      },
      {
        heading: 'Envelope tightness',
        fields: [
          f('date', 'test/date', 'Date of blower door test'),
          f('number', 'job/volume', 'Building volume'),
          f('number', 'test/flow-50', 'Measured leakage, CFM50'),
          f('number', 'test/air-changes-50', 'Calculated ACH50'),
          f('number', 'test/limit', 'Maximum permitted ACH50'),
          radios('test/verdict', 'Test result', 'Passed | Failed'),
          radios('test/direction', 'Type of test', 'Depressurization | Pressurization'),
        ],
      },
      {
        heading: 'Company performing the test',
        fields: [
          f('text', 'tester/company', 'Company name'),
          f('text', 'tester/name', 'Technician'),
          f('text', 'tester/licence', 'Certification number'),
          f('date', 'tester/licence-expiry', 'Expiration date'),
          f('text', 'tester/phone', 'Contact phone'),
          f('text', 'tester/email', 'Contact e-mail'),
        ],
      },
      {
        heading: 'Homeowner',
        fields: [f('text', '', 'Name'), f('text', '', 'Contact phone'), f('text', '', 'Contact e-mail')],
      },
    ],
  },
  {
    name: 'duct sheet of a utility',
    sections: [
      {
        heading: '',
        fields: [
          f('text', '', 'Customer name'),
          f('text', '', 'Service account number'),
          f('text', 'job/address', 'Service address'),
          f('text', 'tester/company', 'Name of testing company'),
          f('text', 'tester/name', 'Name of technician'),
        ],
      },
      {
        heading: 'Duct test results',
        fields: [
          f('date', 'duct system 1/date', 'Test date'),
          f('number', 'duct system 1/duct-flow-25', 'Total duct leakage (CFM25)'),
          f('number', 'duct system 1/air-handler-flow', 'Air handler flow (CFM)'),
          f('number', 'duct system 1/duct-share-of-air-handler', 'Leakage as percent of air handler flow'),
          f('text', '', 'Air handler model'),
          f('number', '', 'Number of supply registers'),
          radios('duct system 1/verdict', 'Pass or fail', 'Pass | Fail'),
        ],
      },
    ],
  },
]

/** The clues of each field of a form, in the order of the page, each with what it asks for. */
export function cluesOfForm(form: AskedForm): { clues: Clues; field: AskedField }[] {
  let position = 0
  return form.sections.flatMap(({ heading, fields }, section) =>
    fields.map((field) => {
      const name = field.names[0] ?? ''
      // Many pages name a control after its label, some by number, some not at all.
      const slug = `${form.name.slice(0, 3)}${section}-${name.toLowerCase().replaceAll(/[^a-z]+/g, '-')}`
      return {
        field,
        clues: {
          kind: field.kind,
          name,
          section: heading,
          attributes: { ...(position % 3 === 0 && { name: slug }), ...field.attributes },
          placeholder: field.placeholder ?? '',
          options: [...(field.options ?? [])],
          position: position++,
        },
      }
    }),
  )
}
