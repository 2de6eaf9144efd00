/** What a figure is: one file each in this folder, its name is the figure's id. */
import type { Sheet, Units } from '../../sheet/schema.ts'
import type { Uncertainty } from '../budget.ts'
import type { Leak } from '../leak.ts'

/** A cell of the sheet that a figure cannot do without; `fit`: a regression. */
export type Need =
  | 'volume'
  | 'floorArea'
  | 'enclosureArea'
  | 'enclosureAreaWithoutFloor'
  | 'height'
  | 'bedrooms'
  | 'weatherShieldingFactor'
  | 'airHandlerFlow'
  | 'fit'

export type Group =
  | 'what forms ask'
  | 'leakage areas'
  | 'flows at other pressures'
  | 'test quality'
  | 'ventilation'
  | 'ducts'

/** A value before its limits are worked out. */
export interface Computed {
  value: number
  unit: string
  /** As a fraction, in the sense of Leak.limits. Left out: no limits. */
  uncertainty?: Uncertainty | undefined
  /** Whether `uncertainty` is in the figure's own unit and not a fraction. */
  absolute?: boolean
  /** Whether a size of the building is in it: its uncertainty is then added. */
  sized?: boolean
  /** Limits that do not lie about the value in that way. */
  low?: number
  high?: number
  note?: string | undefined
  /** The numbers that went into the formula, in words when a reader asks for them. */
  values(): string
}

export interface Context {
  sheet: Sheet
  units: Units
  leak: Leak
  /** Another figure, for the same sheet; its steps then lead to this one too. */
  of(figure: Figure): Computed
}

export interface Figure {
  id: string
  /** The word of the trade, for example ACH50. */
  label: string
  /** Where the word depends on the unit: it then says the unit. */
  labels?: Readonly<Record<string, string>>
  name: string
  group: Group
  subject?: Sheet['subject']
  /** How many decimals it is usually written with, by unit. */
  decimals: Readonly<Record<string, number>>
  needs: readonly Need[]
  /** Which steps of the test lead to it: those up to the fit, or none. Left out: all, up to standard conditions. */
  rests?: 'on the fit' | 'on no reading'
  formula: string
  source: string
  /** @param given every cell of `needs`; the others are NaN and not to be used */
  compute(context: Context, given: Readonly<Record<Need, number>>): Computed
}
