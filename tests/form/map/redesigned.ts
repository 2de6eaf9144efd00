/** Seeded redesigns of forms in words: other labels, fields gone, look-alikes, names of one control given to another. */
import type { Control } from '../../../lib/form/page/controls.ts'
import { findAll } from '../../../lib/form/map/find.ts'
import type { Binding, Clues } from '../../../lib/form/schema.ts'
import { seeded, type Random } from '../../pages/places/redesign.ts'
import { askedForms, cluesOfForm, type AskedField, type AskedForm } from './asked-forms.ts'

export interface Outcome {
  there: number
  found: number
  asked: number
  /** Neither found nor asked about, though still there. */
  lost: string[]
  /** Another control taken for the mapped one: never. */
  wrong: string[]
}

/** A control of no page: what looks for it reads its clues alone. */
export function controlOf(clues: Clues): Control {
  const element = {} as HTMLElement
  const image = { key: '', clues, shown: '', empty: true, complaint: '', attributes: [] }
  return {
    kind: clues.kind,
    element,
    elements: [element],
    name: clues.name,
    section: clues.section,
    position: clues.position,
    far: { image, write: () => Promise.resolve({}) },
  }
}

const otherWords = ['Mailing', 'Previous', 'Second', 'Proposed', 'Neighbour’s', 'Requested', 'Revised', 'Owner’s']
/** What other fields of such forms are called; none of it is asked for by any field of the forms. */
const strangers = [
  'Date of application',
  'Date of payment',
  'Inspection fee',
  'Parcel number',
  'Number of windows',
  'Window area',
  'Name of applicant',
  'Applicant phone',
  'Utility account number',
  'Heating fuel',
  'Year built',
  'Water heater serial number',
  'Crawlspace floor area',
  'Attic volume',
  'Insulation contractor',
  'Lender',
]
const exchanged: Partial<Record<Clues['kind'], Clues['kind']>> = {
  select: 'radio',
  radio: 'select',
  number: 'text',
  text: 'textarea',
  date: 'text',
}

const pick = <T>(random: Random, of: readonly T[]): T => of[Math.floor(random() * of.length)] as T

interface Now {
  clues: Clues
  /** Which field of the mapped form it is; none for what is new. */
  is: number | undefined
}

function redesigned(
  mapped: readonly { clues: Clues; field: AskedField }[],
  random: Random,
): { now: Now[]; gone: Set<number> } {
  const [newNames, newHeadings] = [random() < 0.5, random() < 0.3]
  const gone = new Set<number>()
  const now: Now[] = []
  for (const [at, { clues, field }] of mapped.entries()) {
    const name = random() < 0.5 ? pick(random, field.names) : clues.name
    const attributes = newNames ? {} : clues.attributes
    const section =
      newHeadings && clues.section
        ? pick(random, [clues.section.toUpperCase(), `Part B. ${clues.section}`, `${clues.section}:`])
        : clues.section
    const kind = random() < 0.1 ? (exchanged[clues.kind] ?? clues.kind) : clues.kind
    const stranger = (more: Partial<Clues>) =>
      now.push({ is: undefined, clues: { ...clues, kind, section, attributes: {}, ...more } })
    if (random() < 0.15) {
      gone.add(at)
      // What comes in its place may bear its name in the page's own code.
      if (random() < 0.6) stranger({ name: pick(random, strangers), attributes: random() < 0.5 ? attributes : {} })
    } else now.push({ is: at, clues: { ...clues, name, section, attributes, kind } })
    if (random() < 0.15)
      stranger({
        name: `${pick(random, otherWords)} ${clues.name.toLowerCase()}`,
        attributes: random() < 0.3 ? attributes : {},
      })
  }
  const order = now.map((each) => ({ each, key: random() < 0.7 ? 0 : random() }))
  return { now: order.toSorted((a, b) => a.key - b.key).map(({ each }) => each), gone }
}

export function redesignOf(form: AskedForm, seed: number): Outcome {
  const mapped = cluesOfForm(form)
  const { now, gone } = redesigned(mapped, seeded(seed))
  const bindings: Binding[] = mapped.map(({ clues }, at) => ({
    id: String(at),
    control: clues,
    source: { from: 'text', text: '' },
  }))
  const controls = now.map(({ clues }) => controlOf(clues))
  const whose = new Map(controls.map((control, at) => [control, now[at]?.is]))
  const answers = findAll(bindings, controls)
  const outcome: Outcome = { there: 0, found: 0, asked: 0, lost: [], wrong: [] }
  for (const [at, { clues }] of mapped.entries()) {
    const answer = answers.get(String(at))
    const called = `${seed} ${form.name}: ${clues.section} / ${clues.name}`
    const found = answer && 'found' in answer ? answer.found : undefined
    if (found && whose.get(found) !== at) outcome.wrong.push(`${called} -> ${found.section} / ${found.name}`)
    if (gone.has(at)) continue
    outcome.there++
    const offered =
      !answer || found ? [] : 'ambiguous' in answer ? answer.ambiguous : 'nearest' in answer ? answer.nearest : []
    if (found) outcome.found += whose.get(found) === at ? 1 : 0
    else if (offered.some((control) => whose.get(control) === at)) outcome.asked++
    else
      outcome.lost.push(
        `${called}, now ${now.find(({ is }) => is === at)?.clues.name ?? ''}: ${offered.map(({ name }) => name).join(', ')}`,
      )
  }
  return outcome
}

/** All forms redesigned with each of the seeds, added up. */
export function redesignsOf(seeds: readonly number[]): Outcome {
  const sum: Outcome = { there: 0, found: 0, asked: 0, lost: [], wrong: [] }
  for (const form of askedForms)
    for (const seed of seeds) {
      const one = redesignOf(form, seed)
      sum.there += one.there
      sum.found += one.found
      sum.asked += one.asked
      sum.lost.push(...one.lost)
      sum.wrong.push(...one.wrong)
    }
  return sum
}
