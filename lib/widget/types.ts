/** What a page says to the widget and hears from it. */
import type { Building, Device, Test, TypedSheet } from '../job/schema.ts'
import type { Verdict } from '../limits/verdict.ts'
import type { Report } from '../reduce/report.ts'
import type { Sheet } from '../sheet/schema.ts'

export type { Device, Report, Sheet, Verdict }

type SizeCell =
  | 'volume'
  | 'volumeBasis'
  | 'floorArea'
  | 'enclosureArea'
  | 'enclosureAreaWithoutFloor'
  | 'height'
  | 'bedrooms'
  | 'stories'
  | 'climateZone'
  | 'areaSource'
  | 'volumePercent'
  | 'weatherShieldingFactor'
  | 'elevation'
type TestCell =
  | 'date'
  | 'stage'
  | 'wind'
  | 'limit'
  | 'ownLimit'
  | 'ownLimitFigure'
  | 'onePointFactor'
  | 'instrumentFigure'

/** Every input of the widget as typed. Numbers are texts, in the units of the widget. */
export type Typed = TypedSheet & Required<Pick<Building, SizeCell>> & Required<Pick<Test, TestCell>>

export type InputId = keyof Typed

/** What inputs begin with: numbers may be given as numbers. */
export type Prefill = { [K in keyof Typed]?: Typed[K] extends string ? Typed[K] | number : Typed[K] }

/** How a figure is written. */
export interface Format {
  /** A unit of the same quantity; the figure's own when left out. */
  unit?: string
  /** The usual ones of the figure when left out. */
  decimals?: number
  rounding?: 'half-up' | 'half-even'
  /** Thousands separator; none when left out. */
  grouping?: string
  /** Decimal mark; a point when left out. */
  mark?: string
}

/** By figure: the name it is submitted under, or the name and how it is written. */
export type Names = Record<string, string | (Format & { name: string })>

/** By input: the host's own field that it is read from. `unit` is the unit of that field. */
export type Sources = { [K in InputId]?: string | { selector: string; unit: string } }

/** By figure: the host's own field that it is written into. */
export type Targets = Record<string, string | (Format & { selector: string })>

export type Units = 'ip' | 'si'

/** Everything a page can choose; each is an attribute and a property. */
export interface Options {
  /** The decided values: what is given here is neither shown nor changed. */
  subject: TypedSheet['subject'] | ''
  procedure: TypedSheet['procedure'] | ''
  direction: TypedSheet['direction'] | ''
  limit: string
  units: Units
  flowUnit: Test['units']['flow'] | ''
  /** Figures that are shown, by id; all when empty. */
  figures: string[]
  /** Limits that are offered, by id, with `own` for one's own; all when empty. */
  limits: string[]
  prefill: Prefill
  /** Inputs that can only be looked at. */
  fixed: string[]
  /** Inputs that are not shown. */
  omit: string[]
  names: Names
  sources: Sources
  targets: Targets
  /** BCP 47 tag: decimal mark and thousands separator of what is read and shown. */
  locale: string
  theme: 'light' | 'dark' | 'contrast' | 'auto' | ''
}

/** What came of writing a figure into a field of the host. */
export interface Entered {
  figure: string
  selector: string
  intended: string
  outcome: 'entered' | 'differs' | 'not found' | 'refused' | 'ambiguous'
  readBack: string
  reason: string
}

/** What the widget holds after a change. */
export interface Outcome {
  value: Typed
  sheet: Sheet | undefined
  report: Report | undefined
  verdict: Verdict | undefined
  /** Why there is no verdict: the limit chosen is not for the test. */
  withheld: string | undefined
  /** By submitted name: the figures as written. */
  texts: Record<string, string>
  valid: boolean
}

export interface WidgetEvents {
  'gapsum-report': CustomEvent<Outcome>
  'gapsum-entered': CustomEvent<Entered[]>
}
