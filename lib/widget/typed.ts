/** The inputs of the widget as one flat record, and the job with a single test that they stand in. */
import { blankTest, emptyBuilding, emptyPoint, emptyTester } from '../job/empty.ts'
import type { Job, Test, TypedPoint } from '../job/schema.ts'
import { switchUnits, unitSets } from '../job/units.ts'
import { write } from '../units/write.ts'
import type { InputId, Options, Prefill, Typed } from './types.ts'

/** The inputs of the building. */
export const sizeCells = [
  'volume',
  'volumeBasis',
  'floorArea',
  'enclosureArea',
  'enclosureAreaWithoutFloor',
  'height',
  'bedrooms',
  'stories',
  'climateZone',
  'areaSource',
  'volumePercent',
  'weatherShieldingFactor',
  'elevation',
] as const

const testCells = [
  'date',
  'stage',
  'wind',
  'limit',
  'ownLimit',
  'ownLimitFigure',
  'onePointFactor',
  'instrumentFigure',
] as const

/** Inputs that hold one of a few words. */
const words: { [K in InputId]?: readonly string[] } = {
  subject: ['enclosure', 'ducts'],
  procedure: ['one-point', 'two-point', 'astm-e779', 'iso-9972', 'astm-e3158'],
  direction: ['depressurize', 'pressurize'],
  reading: ['flow', 'device'],
  flowBasis: ['indicated', 'actual'],
  corrections: ['always', 'threshold'],
  ductLeakage: ['total', 'outside'],
  stage: ['', 'rough-in', 'rough-in without air handler', 'final', 'existing'],
  wind: ['', 'calm', 'light', 'windy'],
  areaSource: ['', 'plans', 'measured', 'estimated'],
  volumeBasis: ['', 'net', 'gross'],
}

export const unitsOf = ({ units, flowUnit }: Pick<Options, 'units' | 'flowUnit'>): Test['units'] => {
  const set = unitSets[units === 'si' ? 'SI' : 'IP']
  return { ...set, flow: flowUnit === '' ? set.flow : flowUnit }
}

export const testOf = (job: Job): Test => job.tests[0]!

/** A job with one empty test. */
export function blankJob(options: Options): Job {
  const units = unitsOf(options)
  const test = { id: 'widget', ...blankTest('', options.subject === 'ducts' ? 'ducts' : 'enclosure', units) }
  return {
    id: 'widget',
    created: '',
    updated: '',
    units,
    building: { ...emptyBuilding(), enclosureAreaWithoutFloor: '', volumeBasis: '' },
    tester: emptyTester(),
    tests: [{ ...test, ownLimitFigure: '', sheet: { ...test.sheet, corrections: 'always' } }],
    converted: {},
  }
}

const pick = <T extends object, K extends keyof T>(from: T, keys: readonly K[]) =>
  Object.fromEntries(keys.map((key) => [key, from[key]])) as Pick<T, K>

export function typedOf(job: Job): Typed {
  const test = testOf(job)
  return { ...test.sheet, ...pick(job.building, sizeCells), ...pick(test, testCells) } as Typed
}

const text = (value: unknown, locale: string): string | undefined =>
  typeof value === 'number' && Number.isFinite(value)
    ? write(value, locale === '' ? {} : { locale })
    : typeof value === 'string'
      ? value
      : undefined

function pointsIn(value: unknown, locale: string): TypedPoint[] | undefined {
  if (!Array.isArray(value)) return undefined
  const points = value.map((point: unknown) => {
    const found = emptyPoint()
    const given = Object(point) as Record<string, unknown>
    for (const key of Object.keys(found) as Exclude<keyof TypedPoint, 'fans'>[])
      found[key] = text(given[key], locale) ?? ''
    return found
  })
  return points.length > 0 ? points : [emptyPoint()]
}

/** The job with other inputs. What is of no use for an input is left out: it may come from anywhere. */
export function withTyped(job: Job, patch: Prefill, locale: string): Job {
  const now = typedOf(job)
  const taken: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(patch)) {
    if (!Object.hasOwn(now, key)) continue
    const id = key as InputId
    const found =
      id === 'points'
        ? pointsIn(value, locale)
        : id === 'onePointFactor'
          ? typeof value === 'boolean'
            ? value
            : undefined
          : text(value, locale)
    if (found === undefined || (words[id] && !words[id].includes(String(found)))) continue
    taken[id] = found
  }
  const test = testOf(job)
  const of = (keys: readonly string[]) =>
    Object.fromEntries(keys.flatMap((key) => (key in taken ? [[key, taken[key]]] : [])))
  return {
    ...job,
    building: { ...job.building, ...of(sizeCells) },
    tests: [{ ...test, ...of(testCells), sheet: { ...test.sheet, ...of(Object.keys(test.sheet)) } }],
  }
}

/** What the page has decided, over what was typed; and its units. */
export function decide(job: Job, options: Options): Job {
  const units = unitsOf(options)
  const same = (Object.keys(units) as (keyof Test['units'])[]).every((key) => units[key] === job.units[key])
  const { subject, procedure, direction, limit } = options
  const decided = Object.entries({ subject, procedure, direction, limit }).filter(([, value]) => value !== '')
  return withTyped(same ? job : switchUnits(job, units), Object.fromEntries(decided), options.locale)
}

/** What a test begins with. */
export const initialJob = (options: Options): Job =>
  decide(withTyped(blankJob(options), options.prefill, options.locale), options)
