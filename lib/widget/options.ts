/** The host's choices as attributes. */
import { language } from '../words/say.ts'
import type { Options } from './types.ts'

const camel = (text: string): string => text.replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase())

const list = (text: string): string[] => text.split(/[\s,]+/).filter(Boolean)

/** Inputs are named `floorArea` in scripts and may be named `floor-area` in attributes. */
const inputs = (text: string): string[] => list(text).map(camel)

const one =
  <T extends string>(...allowed: T[]) =>
  (text: string): T =>
    allowed.find((value) => value === text) ?? allowed[0]!

function object(text: string): Record<string, unknown> {
  if (text.trim() === '') return {}
  const value: unknown = JSON.parse(text)
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : {}
}

/** By property: the attribute, and how its text is read. */
export const attributes: { [K in keyof Options]: [attribute: string, read: (text: string) => unknown] } = {
  subject: ['subject', one('', 'enclosure', 'ducts')],
  procedure: ['procedure', one('', 'one-point', 'two-point', 'astm-e779', 'iso-9972', 'astm-e3158')],
  direction: ['direction', one('', 'depressurize', 'pressurize')],
  limit: ['limit', String],
  units: ['units', one('ip', 'si')],
  flowUnit: ['flow-unit', one('', 'cfm', 'm3/h', 'L/s')],
  figures: ['figures', list],
  limits: ['limits', list],
  prefill: ['prefill', object],
  fixed: ['fixed', inputs],
  omit: ['omit', inputs],
  names: ['names', object],
  sources: ['sources', object],
  targets: ['targets', object],
  locale: ['locale', (text) => text || language()],
  theme: ['theme', one('', 'light', 'dark', 'contrast', 'auto')],
}

export const propertyOf = new Map(
  (Object.keys(attributes) as (keyof Options)[]).map((property) => [attributes[property][0], property]),
)

/** What an attribute says; `''` for one that is absent. */
export function readAttribute(property: keyof Options, text: string): unknown {
  const [attribute, read] = attributes[property]
  try {
    return read(text)
  } catch (error) {
    console.error(
      `gapsum-widget: ${attribute} is not JSON (${error instanceof Error ? error.message : String(error)}).`,
    )
    return read('')
  }
}

export const plainOptions = (): Options =>
  Object.fromEntries(
    (Object.keys(attributes) as (keyof Options)[]).map((property) => [property, readAttribute(property, '')]),
  ) as unknown as Options
