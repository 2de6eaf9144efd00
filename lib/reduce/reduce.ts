/** From a sheet to a report. */
import type { Sheet } from '../sheet/schema.ts'
import { checks } from './checks/index.ts'
import { figures } from './figures/index.ts'
import type { Computed, Context, Figure, Need } from './figures/figure.ts'
import { type Readings, readingsOf } from './flow.ts'
import { type Leak, type ReduceOptions, leakOf } from './leak.ts'
import type { ChainStep, FigureValue, Report, Step } from './report.ts'
import { short } from './say.ts'
import { quadrature, usualInstrument } from './uncertainty.ts'
import { parseSheet } from './parse.ts'
import { validate } from './validate.ts'
import { chainSteps, usedPoints } from './working.ts'
import { say } from '../words/say.ts'

function givenOf({ building, duct, weatherShieldingFactor }: Sheet, leak: Leak): Record<Need, number> {
  return {
    volume: building?.volume ?? NaN,
    floorArea: building?.floorArea ?? NaN,
    enclosureArea: building?.enclosureArea ?? NaN,
    height: building?.height ?? NaN,
    bedrooms: building?.bedrooms ?? NaN,
    weatherShieldingFactor: weatherShieldingFactor ?? NaN,
    airHandlerFlow: duct?.airHandlerFlow ?? NaN,
    fit: leak.line ? 1 : NaN,
  }
}

/** The parts of a note that hold for every figure of a sheet. */
interface Notes {
  limits: string
  /** The same of a figure with a size of the building in it, and what that adds, as a fraction. */
  sized: { limits: string; half: number }
  chain: (string | undefined)[]
}

function airNote(typed: Sheet['air'], found: Readings['air']): string | undefined {
  if (!typed) return say`Temperatures not given: no air correction.`
  return found ? undefined : say`Air within the thresholds of ANSI/RESNET/ICC 380: no air correction.`
}

/** Where the limits come from: scatter or assumption, and the instrument. */
function limitsOf({ instrument }: Sheet, { line, stations }: Leak, options: ReduceOptions, percent = 0): string {
  const { pressurePercent, pressureFloor, flowPercent } = instrument ?? usualInstrument
  const repeats = stations.some(({ scatter }) => scatter)
  const parts = [
    line && say`the scatter of the points`,
    stations.length === 1 && say`the assumed exponent`,
    repeats && say`the scatter of the repeats`,
    options.instrumentUncertainty !== false &&
      say`the instrument (± ${short(flowPercent)} % flow, ± ${short(pressurePercent)} % or ${short(pressureFloor)} Pa)`,
    percent && say`the size of the building (± ${short(percent)} %)`,
  ].filter(Boolean)
  const named = parts.join(say` and `)
  if (parts.length > 1) return say`Limits: ${named}, in quadrature.`
  return named ? say`Limits: ${named} alone.` : say`Single readings without the instrument’s part show no limits.`
}

function notesOf(sheet: Sheet, readings: Readings, leak: Leak, options: ReduceOptions): Notes {
  const percent = sheet.building?.volumePercent ?? 0
  return {
    limits: limitsOf(sheet, leak, options),
    sized: { limits: limitsOf(sheet, leak, options, percent), half: percent / 100 },
    chain: [
      usedPoints(sheet, readings, leak),
      leak.factor === 1 ? undefined : say`Multiplied by the one-point factor of ${leak.factor}.`,
      airNote(sheet.air, readings.air),
    ],
  }
}

/** Computes figures, each once, and keeps which ones each was computed from. */
class Figures {
  readonly computed = new Map<string, Computed>()
  readonly from = new Map<string, Set<string>>()
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
    const from = new Set<string>()
    const of = (other: Figure) => {
      const result = this.get(other)
      from.add(other.id)
      for (const id of this.from.get(other.id)!) from.add(id)
      return result
    }
    const result = figure.compute({ ...this.context, of }, this.given)
    this.from.set(figure.id, from)
    this.computed.set(figure.id, result)
    return result
  }
}

/** Where the limits come from. Those of the exponent of one point are its own and stand in its note. */
function limitsNote(
  { id }: Figure,
  { half, sized }: Computed,
  { line, assumed }: Leak,
  notes: Notes,
): string | undefined {
  const { limits } = sized ? notes.sized : notes
  if (!id.startsWith('leakage-')) return limits
  if (line) return say`Limits: the fit alone.`
  return half === undefined && assumed ? undefined : limits
}

function valueOf(figure: Figure, computed: Computed, leak: Leak, notes: Notes): FigureValue {
  const { value, unit, half, sized, low, high, note } = computed
  const limits =
    half !== undefined
      ? leak.limits(value, sized ? quadrature(half, notes.sized.half) : half)
      : low !== undefined && high !== undefined
        ? { low, high }
        : undefined
  const text = [note, ...(figure.rests ? [] : notes.chain), limits && limitsNote(figure, computed, leak, notes)]
    .filter(Boolean)
    .join(' ')
  return { value, unit, ...limits, ...(text && { note: text }) }
}

function restsOn({ rests }: Figure, step: ChainStep): boolean {
  return rests === undefined || (rests === 'on the fit' && !step.air)
}

function workingOfAll(list: Figure[], all: Figures, chain: ChainStep[]): Step[] {
  const steps: Step[] = chain.map((step) => {
    const { air: _, ...rest } = step
    return { ...rest, for: list.filter((figure) => restsOn(figure, step)).map(({ id }) => id) }
  })
  for (const { id, name, formula, source } of list) {
    const { value, unit, values } = all.computed.get(id)!
    steps.push({
      step: name.charAt(0).toUpperCase() + name.slice(1),
      formula,
      values,
      result: `${short(value)}${unit === '1' ? '' : ` ${unit}`}`,
      source,
      for: list.filter((other) => other.id === id || all.from.get(other.id)!.has(id)).map((other) => other.id),
    })
  }
  return steps
}

/** Where each figure stands in the working: those it is computed from come first. */
function inOrder(list: Figure[], all: Figures): Figure[] {
  return list.toSorted((a, b) => all.from.get(a.id)!.size - all.from.get(b.id)!.size)
}

function fitOf(leak: Leak): Pick<Report, 'fit'> {
  const { line, coefficient, exponent, coefficientHalf, exponentHalf } = leak
  if (!line) return {}
  const { low, high } = leak.limits(coefficient, coefficientHalf)
  return {
    fit: {
      coefficient,
      exponent,
      correlation: line.correlation,
      exponentLow: exponent - exponentHalf,
      exponentHigh: exponent + exponentHalf,
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
  const notes = notesOf(sheet, readings, leak, options)
  const values: Report['figures'] = {}
  for (const figure of list) values[figure.id] = valueOf(figure, all.get(figure), leak, notes)
  const context = { sheet, readings, leak, figures: values }
  return {
    figures: values,
    ...fitOf(leak),
    checks: checks.flatMap(({ id, run }) => {
      const result = run(context)
      return result ? [{ id, ...result }] : []
    }),
    working: workingOfAll(inOrder(list, all), all, chainSteps(sheet, readings, leak, options)),
  }
}

/**
 * The steps of a report that lead to one figure, in order.
 *
 * @param figure id
 */
export function workingOf(report: Pick<Report, 'working'>, figure: string): Step[] {
  return report.working.filter((step) => step.for.includes(figure))
}
