/** Words for the verdict of a test. */
import type { Limit, Verdict } from '../../limits/index.ts'
import { roundingFlips } from '../../limits/index.ts'
import { decimalsOf, wordOf } from '../../reduce/figures/index.ts'
import type { FigureValue } from '../../reduce/report.ts'
import { symbol } from '../../units/symbol.ts'
import { halfUp, marginOf, mostlyOf, rangeOf } from '../figure/lines.ts'
import type { VerdictProps } from '../figure/verdict-block.tsx'
import { asRead } from '../in-locale.ts'
import { say } from '../../words/say.ts'

/** `ACH50`, or a unit where the figure has no word that stands for one. */
const unitOf = (id: string, unit: string): string =>
  unit === '1/h' || id === 'flow-50' || id === 'duct-flow-25' ? wordOf(id, unit) : symbol(unit)

/** A limit as it is said: at least one decimal, as codes print it. */
export const limitText = ({ value }: Pick<Limit, 'value'>): string =>
  Number.isInteger(value) && value < 100 ? value.toFixed(1) : String(value)

/** `95 % likely below 3.0`: never more certain than the numbers are. */
export function likelihood(probability: number, limit: Pick<Limit, 'value'>): string {
  const percent = Math.min(99, Math.max(1, Math.round(100 * probability)))
  const bound = limitText(limit)
  if (probability > 0.99) return say`More than ${percent} % likely below ${bound}.`
  if (probability < 0.01) return say`Less than ${percent} % likely below ${bound}.`
  return say`${percent} % likely below ${bound}.`
}

/** As many decimals as it takes to tell the end of the interval beyond the limit from the limit. */
function decimalsPast({ low, high }: FigureValue, { limit, meets }: Verdict, decimals: number): number {
  const end = meets ? high : low
  if (end === undefined) return decimals
  const more = [0, 1, 2, 3].find((step) => Number(halfUp(end, decimals + step)) !== limit.value)
  return decimals + (more ?? 0)
}

function reachOf(range: string, verdict: Verdict): string {
  if (!range) return ''
  if (verdict.guarded === 'below') return say`The whole interval, ${range}, lies within it.`
  if (verdict.guarded === 'above') return say`The whole interval, ${range}, lies beyond it.`
  return verdict.meets ? say`The interval, ${range}, reaches past it.` : say`The interval, ${range}, reaches below it.`
}

const clauseOf = (limit: Limit): string => {
  const zones = limit.climateZones
  const where =
    zones && (zones.length > 1 ? say`zones ${zones[0] ?? 0} to ${zones.at(-1) ?? 0}` : say`zones ${zones[0] ?? 0}`)
  const place = [[limit.edition, limit.clause].filter(Boolean).join(' '), where, asRead(limit.condition ?? '')].filter(
    Boolean,
  )
  const memory = limit.confidence === 'from memory' ? ` ${say`Number or clause from memory: look it up.`}` : ''
  return `${place.join(', ')}. ${limit.caution}${memory}`
}

/** The verdict block of a figure with or without a limit; `notes` are said below it. */
export function verdictLines(
  id: string,
  found: FigureValue,
  verdict: Verdict | undefined,
  notes: readonly string[],
): VerdictProps {
  // The drawing and the words are in the unit of the limit, when there is one.
  const decimals = decimalsOf(id, found.unit)
  const range = rangeOf(found, decimals)
  const base = {
    value: halfUp(found.value, decimals),
    margin: marginOf(found, decimals),
    unit: unitOf(id, found.unit),
    mostly: mostlyOf(found),
  }
  const span =
    found.low === undefined || found.high === undefined
      ? undefined
      : { value: found.value, low: found.low, high: found.high }
  if (!verdict) {
    return {
      ...base,
      interval: span,
      drawn: range && say`${base.value}, interval ${range} ${base.unit}`,
      likely: '',
      reach: range && say`95 % interval ${range}.`,
      notes,
      source: say`Without a limit there is no verdict.`,
    }
  }
  const { limit, probability } = verdict
  const flip = roundingFlips(found.value, limit, decimals, 'half-up', found.unit)
  const sameUnit = limit.unit === found.unit
  return {
    ...base,
    interval: span && { ...span, limit: sameUnit ? limit.value : undefined },
    drawn: say`${base.value}, interval ${range}, limit ${limitText(limit)} ${base.unit}`,
    verdict: {
      meets: verdict.meets,
      text: `${verdict.meets ? say`Meets the limit` : say`Does not meet the limit`}, ${limitText(limit)}${sameUnit ? '' : ` ${symbol(limit.unit)}`}`,
    },
    likely: probability === undefined ? '' : likelihood(probability, limit),
    reach: reachOf(sameUnit ? rangeOf(found, decimalsPast(found, verdict, decimals)) : range, verdict),
    notes: flip ? [flip.sentence, ...notes] : notes,
    source: clauseOf(limit),
  }
}
