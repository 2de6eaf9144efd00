/** From a sheet to a report. */
import type { Sheet } from '../sheet/schema.ts'
import { type Uncertainty, budgetOf, coverage, partWords, withSize } from './budget.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures/index.ts'
import type { Computed, Context, Figure, Need } from './figures/figure.ts'
import { type Readings, readingsOf } from './flow.ts'
import { type Leak, type ReduceOptions, leakOf } from './leak.ts'
import type { BudgetPart, ChainStep, FigureValue, Report, Step } from './report.ts'
import { calmScatter } from './noise.ts'
import { short } from './say.ts'
import { scatterAlone } from './scatter-alone.ts'
import { parseSheet } from './parse.ts'
import { validate } from './validate.ts'
import { chainSteps, usedPoints } from './working.ts'
import { say } from '../words/say.ts'

function givenOf({ building, duct, weatherShieldingFactor }: Sheet, leak: Leak): Record<Need, number> {
  return {
    volume: building?.volume ?? NaN,
    floorArea: building?.floorArea ?? NaN,
    enclosureArea: building?.enclosureArea ?? NaN,
    enclosureAreaWithoutFloor: building?.enclosureAreaWithoutFloor ?? NaN,
    height: building?.height ?? NaN,
    bedrooms: building?.bedrooms ?? NaN,
    weatherShieldingFactor: weatherShieldingFactor ?? NaN,
    airHandlerFlow: duct?.airHandlerFlow ?? NaN,
    fit: leak.line ? 1 : NaN,
  }
}

/** Parts of a note that are there, in one text. */
const together = (...parts: (string | undefined)[]): string => {
  let text = ''
  for (const part of parts) if (part) text += text === '' ? part : ` ${part}`
  return text
}

function airNote(typed: Sheet['air'], found: Readings['air']): string | undefined {
  if (!typed) return say`Temperatures not given: no air correction.`
  return found ? undefined : say`Air within the thresholds of ANSI/RESNET/ICC 380: no air correction.`
}

/** From this share of the variance on a part is named, 1 %. */
const worthNaming = 0.01

/** Where the limits come from: each part with its share of the variance, the largest first. */
function limitsNote(of: Uncertainty, leak: Leak, budget: readonly BudgetPart[]): string {
  if (of.half === 0) return say`Single readings without the instrument’s part show no limits.`
  if (budget.length === 0) {
    return leak.line
      ? say`Limits: the scatter of the points alone.`
      : say`Limits: the scatter of the readings and the assumed exponent alone.`
  }
  const calm = leak.basis?.baseline.assumed
    ? say`Few baseline readings: the weather is taken as calm beside them, ${calmScatter} Pa.`
    : ''
  const named = budget
    .filter(({ share }) => share >= worthNaming)
    .map(({ part, share }) => `${partWords(part)} ${Math.round(100 * share)} %`)
  const factor =
    of.freedom === undefined
      ? say`coverage factor 2`
      : say`coverage factor ${short(coverage(of.freedom), 3)}, ${of.freedom} degrees of freedom`
  return together(say`Limits, by share of the variance: ${named.join(', ')}; ${factor}.`, calm)
}

/** The part of a note that holds for every figure of a sheet. */
function noteOfAll(sheet: Sheet, readings: Readings, leak: Leak): string {
  return together(
    usedPoints(sheet, readings, leak),
    leak.factor === 1 ? undefined : say`Multiplied by the one-point factor of ${leak.factor}.`,
    airNote(sheet.air, readings.air),
  )
}

/** Computes figures, each once, and keeps which ones each was computed from. */
class Figures {
  readonly computed = new Map<string, Computed>()
  /** Ids without doubles: a few each, so that a list is smaller and as quick as a set. */
  readonly from = new Map<string, readonly string[]>()
  private readonly given: Record<Need, number>
  private readonly context: Omit<Context, 'of'>

  constructor(sheet: Sheet, leak: Leak) {
    this.given = givenOf(sheet, leak)
    this.context = { sheet, leak, units: sheet.units }
  }

  allows({ needs, subject }: Figure): boolean {
    return (
      (subject === undefined || subject === this.context.sheet.subject) &&
      needs.every((need) => !Number.isNaN(this.given[need]))
    )
  }

  get(figure: Figure): Computed {
    const known = this.computed.get(figure.id)
    if (known) return known
    const from: string[] = []
    const of = (other: Figure) => {
      const result = this.get(other)
      for (const id of [other.id, ...this.from.get(other.id)!]) if (!from.includes(id)) from.push(id)
      return result
    }
    const result = figure.compute({ ...this.context, of }, this.given)
    this.from.set(figure.id, from)
    this.computed.set(figure.id, result)
    return result
  }
}

/** Limits about a value: a fraction in the sense of the leak, or in the figure's own unit. */
function limitsOf({ value, absolute }: Computed, { half }: Uncertainty, leak: Leak): { low: number; high: number } {
  return absolute ? { low: value - half, high: value + half } : leak.limits(value, half)
}

/** An uncertainty with the size of the building where that joins in, its budget and its note. */
interface Known {
  of: Uncertainty
  budget: BudgetPart[]
  note: string
}

/** What is known of each uncertainty, worked out once for all figures that share it: those without a size, and with. */
class Limits {
  private readonly known = [new Map<Uncertainty, Known>(), new Map<Uncertainty, Known>()] as const
  private readonly sheet: Sheet
  private readonly leak: Leak

  constructor(sheet: Sheet, leak: Leak) {
    this.sheet = sheet
    this.leak = leak
  }

  get({ uncertainty, sized = false, absolute, value }: Computed): Known | undefined {
    if (uncertainty === undefined) return undefined
    const map = this.known[sized ? 1 : 0]
    let known = map.get(uncertainty)
    if (!known) map.set(uncertainty, (known = this.work(uncertainty, sized, absolute ? value : 1)))
    return known
  }

  private work(uncertainty: Uncertainty, sized: boolean, per: number): Known {
    const of = sized ? withSize(uncertainty, this.sheet.building?.volumePercent ?? 0) : uncertainty
    const budget = budgetOf(of, per)
    return { of, budget, note: limitsNote(of, this.leak, budget) }
  }
}

function valueOf(figure: Figure, computed: Computed, all: Limits, leak: Leak, common: string): FigureValue {
  const { value, unit, low, high, note } = computed
  const known = all.get(computed)
  const of = known?.of
  const limits = of ? limitsOf(computed, of, leak) : low !== undefined && high !== undefined && { low, high }
  const found: FigureValue = { value, unit, ...limits }
  if (of?.freedom !== undefined) found.freedom = of.freedom
  if (of && leak.factor !== 1 && figure.rests === undefined) found.factor = leak.factor
  if (known && known.budget.length > 0) found.budget = known.budget
  const text = together(note, figure.rests ? '' : common, known?.note)
  if (text) found.note = text
  return found
}

const idsOf = (list: Figure[]): string[] => list.map(({ id }) => id)

function workingOfAll(list: Figure[], all: Figures, chain: ChainStep[]): Step[] {
  const onAir = idsOf(list.filter(({ rests }) => rests === undefined))
  const onFit = idsOf(list.filter(({ rests }) => rests !== 'on no reading'))
  // Which figures each leads to, itself among them: most lead to no other.
  const leadsTo = new Map<string, string[]>()
  for (const { id } of list) {
    leadsTo.set(id, [id])
    for (const other of all.from.get(id)!) leadsTo.get(other)?.push(id)
  }
  const steps = chain.map(({ air, ...step }): Step => ({ ...step, for: air ? onAir : onFit }))
  for (const { id, name, formula, source } of list) {
    const computed = all.computed.get(id)!
    const { value, unit } = computed
    steps.push({
      step: name.charAt(0).toUpperCase() + name.slice(1),
      formula,
      values: computed.values(),
      result: `${short(value)}${unit === '1' ? '' : ` ${unit}`}`,
      source,
      for: leadsTo.get(id)!,
    })
  }
  return steps
}

/** Where each figure stands in the working: those it is computed from come first. */
function inOrder(list: Figure[], all: Figures): Figure[] {
  const count = ({ id }: Figure) => all.from.get(id)!.length
  return list.toSorted((one, other) => count(one) - count(other))
}

/** The fit with the limits of its own scatter, whatever the figures hold beside it. */
function fitOf(sheet: Sheet, leak: Leak): Pick<Report, 'fit'> {
  const { line, coefficient, exponent } = leak
  if (!line) return {}
  const alone = scatterAlone(sheet, leak)
  const { low, high } = leak.limits(coefficient, alone.at(0, 0).half)
  return {
    fit: {
      coefficient,
      exponent,
      correlation: line.correlation,
      exponentLow: exponent - alone.exponent.half,
      exponentHigh: exponent + alone.exponent.half,
      coefficientLow: low,
      coefficientHigh: high,
      points: line.count,
    },
  }
}

/**
 * A sheet taken apart: what {@link reduceSheet} and the points of a sheet both start from.
 *
 * @throws SheetError with one issue for each cell that stands in the way
 */
export function takeApart(sheet: Sheet, options: ReduceOptions): { readings: Readings; leak: Leak } {
  validate(sheet)
  const readings = readingsOf(sheet, options.pointNumbers)
  return { readings, leak: leakOf(sheet, readings, options) }
}

const make = Symbol('make')

/**
 * The working of a report: long texts that few ask for, made when they are read. One accessor serves all reports: with one
 * of its own each report would have its own hidden class, and memory would keep it until the next full collection.
 */
const whenRead = {
  enumerable: true,
  get(this: { [make](): Step[] }) {
    return this[make]()
  },
}

/**
 * Every figure that a sheet allows, with checks and working.
 *
 * @param input a sheet; it may come from anywhere, its form is looked at first
 * @throws SheetError with one issue for each cell that stands in the way
 */
export function reduce(input: Sheet, options: ReduceOptions = {}): Report {
  return reduceSheet(parseSheet(input), options)
}

/**
 * {@link reduce} for a sheet whose form is known to be right.
 *
 * @throws SheetError with one issue for each cell that stands in the way
 */
export function reduceSheet(sheet: Sheet, options: ReduceOptions = {}): Report {
  const { readings, leak } = takeApart(sheet, options)
  const all = new Figures(sheet, leak)
  const list = figures.filter((figure) => all.allows(figure))
  const common = noteOfAll(sheet, readings, leak)
  const limits = new Limits(sheet, leak)
  const values: Report['figures'] = {}
  for (const figure of list) values[figure.id] = valueOf(figure, all.get(figure), limits, leak, common)
  const context = { sheet, readings, leak, figures: values }
  const report = {
    figures: values,
    ...fitOf(sheet, leak),
    checks: checks.flatMap(({ id, run }) => {
      const result = run(context)
      return result ? [{ id, ...result }] : []
    }),
  }
  let working: Step[] | undefined
  return Object.defineProperties(report as Report, {
    [make]: {
      value: () => (working ??= workingOfAll(inOrder(list, all), all, chainSteps(sheet, readings, leak, options))),
    },
    working: whenRead,
  })
}

/**
 * The steps of a report that lead to one figure, in order.
 *
 * @param figure id
 */
export function workingOf(report: Pick<Report, 'working'>, figure: string): Step[] {
  return report.working.filter((step) => step.for.includes(figure))
}
