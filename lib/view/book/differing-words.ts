/** What differs between a thing of the book and the file's, field by field, in words. */
import { canonical } from '../../book/canonical.ts'
import type { Differing } from '../../book/differing.ts'
import type { Binding, FormMap } from '../../form/schema.ts'
import type { Device, KeptLimit } from '../../job/schema.ts'
import { zoneWords } from '../../limits/index.ts'
import type { LimitTerms } from '../../limits/schema.ts'
import { symbol } from '../../units/symbol.ts'
import { asRead } from '../../results/in-locale.ts'
import { figureWords } from './kept-limit-form.tsx'
import { sourceWords, sourceWrite } from './source-words.ts'
import { dayAndYear } from '../parts/wording.ts'
import { say, shown } from '../../words/say.ts'

/** One field: what it is called, and what stands in it here and in the file. */
export type DifferingField = { field: string; yours: string; theirs: string }

const same = (one: unknown, other: unknown): boolean => canonical(one ?? null) === canonical(other ?? null)

/** The fields that are not the same, in the order of their forms; whatever differs has at least one. */
export function differingFields(one: Differing): DifferingField[] {
  if (one.kind === 'device') return ofDevice(one.yours, one.theirs)
  if (one.kind === 'limit') return ofLimit(one.yours, one.theirs)
  return ofMap(one.yours, one.theirs)
}

const none = () => say`none`
const orNone = (text: string | undefined): string => text || none()

type Range = Device['ranges'][number]
const rangeParts = (): [keyof Range, string][] => [
  ['coefficient', say`coefficient`],
  ['exponent', say`exponent`],
  ['minPressure', say`from, Pa`],
  ['maxPressure', say`to, Pa`],
]

function ofDevice(yours: Device, theirs: Device): DifferingField[] {
  const parts: [keyof Device, string, (device: Device) => string][] = [
    ['name', say`Name`, ({ name }) => name],
    ['serial', say`Serial number`, ({ serial }) => serial],
    ['calibrated', say`Calibrated on`, ({ calibrated }) => day(calibrated)],
    ['intervalMonths', say`Valid for, months`, ({ intervalMonths }) => intervalMonths],
    ['flowUnit', say`Flow unit of the certificate`, ({ flowUnit }) => symbol(flowUnit)],
    ['calibrationDensity', say`Air density at calibration, kg/m³`, (one) => one.calibrationDensity],
    ['decimal', say`Decimal mark`, ({ decimal }) => (decimal ? say`comma` : say`point`)],
  ]
  return [
    ...fieldsOf(yours, theirs, parts),
    ...ofRanges(yours.ranges, theirs.ranges),
    ...otherKeys(yours, theirs, parts, ['id', 'ranges']),
  ]
}

/** A day as it is read; what is none stands as it was typed. */
const day = (iso: string): string => (/^\d{4}-\d{2}-\d{2}$/.test(iso) ? dayAndYear(`${iso}T12:00`) : iso)

function fieldsOf<T>(yours: T, theirs: T, parts: readonly [keyof T, string, (one: T) => string][]): DifferingField[] {
  return parts.flatMap(([key, field, words]) =>
    same(yours[key], theirs[key]) ? [] : { field, yours: orNone(words(yours)), theirs: orNone(words(theirs)) },
  )
}

/** Ranges that have the same name, one after the other. */
function ofRanges(yours: readonly Range[], theirs: readonly Range[]): DifferingField[] {
  const found: DifferingField[] = []
  const left = [...theirs]
  for (const mine of yours) {
    const at = left.findIndex(({ name }) => name === mine.name)
    const [other] = at < 0 ? [] : left.splice(at, 1)
    const range = say`Range ${mine.name || none()}`
    if (!other) found.push({ field: range, yours: rangeWords(mine), theirs: none() })
    else
      for (const [key, part] of rangeParts())
        if (mine[key] !== other[key])
          found.push({ field: `${range}: ${part}`, yours: orNone(mine[key]), theirs: orNone(other[key]) })
  }
  for (const other of left)
    found.push({ field: say`Range ${other.name || none()}`, yours: none(), theirs: rangeWords(other) })
  const order = (ranges: readonly Range[]) => ranges.map(({ name }) => name).join(', ')
  if (found.length === 0 && !same(yours, theirs))
    found.push({ field: say`Order of the ranges`, yours: order(yours), theirs: order(theirs) })
  return found
}

const rangeWords = (range: Range): string =>
  rangeParts()
    .map(([key, part]) => `${part} ${orNone(range[key])}`)
    .join('; ')

function ofLimit(yours: KeptLimit, theirs: KeptLimit): DifferingField[] {
  const parts: [keyof KeptLimit, string, (limit: KeptLimit) => string][] = [
    ['name', say`Name`, ({ name }) => name],
    ['set', say`Set: edition or local code`, ({ set = '' }) => set],
    ['figure', say`On the figure`, ({ figure, unit }) => figureWords(figure, unit)],
    ['value', say`Limit`, ({ value }) => value],
    ['unit', say`Unit`, ({ unit }) => symbol(unit)],
    ['origin', say`Where it stands`, ({ origin }) => origin],
  ]
  return [
    ...fieldsOf(yours, theirs, parts),
    ...ofTerms(yours.terms ?? {}, theirs.terms ?? {}),
    ...otherKeys(yours, theirs, parts, ['id', 'terms']),
  ]
}

function ofTerms(yours: LimitTerms, theirs: LimitTerms): DifferingField[] {
  const parts: [keyof LimitTerms, string, (terms: LimitTerms) => string][] = [
    ['comparison', say`Has to be`, ({ comparison }) => (comparison === '<' ? say`less than` : say`at most`)],
    [
      'climateZones',
      say`Climate zones`,
      ({ climateZones: zones = [] }) => (zones.length > 0 ? zoneWords(zones) : say`any`),
    ],
    ['stages', say`Stages of the work`, ({ stages = [] }) => stages.map(shown).join(', ') || say`any`],
    [
      'leakage',
      say`Written for`,
      ({ leakage }) => (leakage ? (leakage === 'total' ? say`total leakage` : say`leakage to outside`) : say`either`),
    ],
    ['condition', say`Condition`, ({ condition = '' }) => asRead(condition)],
  ]
  return [...fieldsOf(yours, theirs, parts), ...otherKeys(yours, theirs, parts, [])]
}

function ofMap(yours: FormMap, theirs: FormMap): DifferingField[] {
  const found: DifferingField[] = []
  if (yours.name !== theirs.name) found.push({ field: say`Name`, yours: yours.name, theirs: theirs.name })
  if (!same(addresses(yours), addresses(theirs)))
    found.push({ field: say`Address`, yours: addresses(yours).join(', '), theirs: addresses(theirs).join(', ') })
  for (const mine of yours.bindings) {
    const other = theirs.bindings.find(({ id }) => id === mine.id)
    if (!other) found.push({ field: controlWords(mine), yours: typedWords(mine), theirs: none() })
    else if (!same(mine, other)) found.push(...ofBinding(mine, other))
  }
  for (const other of theirs.bindings)
    if (!yours.bindings.some(({ id }) => id === other.id))
      found.push({ field: controlWords(other), yours: none(), theirs: typedWords(other) })
  const [mine, other] = [orderOf(yours), orderOf(theirs)]
  if (found.length === 0 && mine !== other)
    found.push({ field: say`Order of the controls`, yours: mine, theirs: other })
  return [...found, ...otherKeys(yours, theirs, [], mapKeys)]
}

/** Those told above, and those that the book itself gives. */
const mapKeys = ['id', 'version', 'created', 'updated', 'name', 'address', 'further', 'bindings'] as const

const addresses = ({ address, further = [] }: FormMap): string[] =>
  [address, ...further].map(({ origin, path }) => origin + path)

const orderOf = ({ bindings }: FormMap): string => bindings.map(({ control }) => control.name).join(', ')

const controlWords = ({ control: { name, section } }: Binding): string =>
  section ? say`Control ${name}, ${section}` : say`Control ${name}`

const typedWords = ({ source }: Binding): string =>
  [sourceWords(source, new Map()), sourceWrite(source)].filter(Boolean).join('; ')

function ofBinding(yours: Binding, theirs: Binding): DifferingField[] {
  const field = controlWords(yours)
  const found: DifferingField[] = []
  const [mine, other] = [typedWords(yours), typedWords(theirs)]
  if (mine !== other) found.push({ field: say`${field}: what is typed`, yours: mine, theirs: other })
  const names: Record<string, string> = {
    'control.kind': say`kind of control`,
    'control.name': say`name`,
    'control.section': say`section`,
    'control.placeholder': say`example text`,
    'control.position': say`place among those of its kind`,
    'control.options': say`options`,
    step: say`step of the form`,
  }
  // What is typed is told in words; only where these are the same its parts are.
  const hidden = (path: string) => path.startsWith('source.') && mine !== other
  for (const { path, yours: one, theirs: two } of singles(yours, theirs)) {
    const known = Object.keys(names).find((name) => path === name || path.startsWith(`${name}.`))
    if (!hidden(path)) found.push({ field: `${field}: ${known ? names[known] : path}`, yours: one, theirs: two })
  }
  return found
}

/** Keys that no form has a field for, with what is in them as it is kept. */
function otherKeys<T extends object>(
  yours: T,
  theirs: T,
  told: readonly (readonly [keyof T, ...unknown[]])[],
  apart: readonly (keyof T)[],
): DifferingField[] {
  const known = new Set<string>([...told.map(([key]) => key), ...apart].map(String))
  const rest = (one: T) => Object.fromEntries(Object.entries(one).filter(([key]) => !known.has(key)))
  return singles(rest(yours), rest(theirs)).map(({ path, yours: one, theirs: two }) => ({
    field: path,
    yours: one,
    theirs: two,
  }))
}

/** The single values that differ, by their path. */
function singles(yours: unknown, theirs: unknown, path = ''): { path: string; yours: string; theirs: string }[] {
  if (same(yours, theirs)) return []
  if (!isTree(yours) || !isTree(theirs)) return [{ path, yours: asText(yours), theirs: asText(theirs) }]
  return [...new Set([...Object.keys(yours), ...Object.keys(theirs)])].flatMap((key) =>
    singles(yours[key], theirs[key], path ? `${path}.${key}` : key),
  )
}

const isTree = (one: unknown): one is Record<string, unknown> =>
  typeof one === 'object' && one !== null && !Array.isArray(one)

function asText(value: unknown): string {
  if (value === undefined || value === '') return none()
  if (Array.isArray(value)) return value.map(asText).join(', ') || none()
  return typeof value === 'object' ? JSON.stringify(value) : String(value)
}
