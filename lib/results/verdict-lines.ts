/** Words for the verdict of a test. */
import type { Limit, Verdict, Withheld } from '../limits/index.ts'
import { boundText, conditionSentence, factorSentence, roundingFlips, zoneWords } from '../limits/index.ts'
import { decimalsOf, wordOf } from '../reduce/figures/index.ts'
import type { FigureValue } from '../reduce/report.ts'
import { symbol } from '../units/symbol.ts'
import { halfUp, marginOf, mostlyOf, rangeOf } from './lines.ts'
import type { VerdictProps } from './shown.ts'
import { asRead } from './in-locale.ts'
import { say } from '../words/say.ts'

/** `ACH50`, or a unit where the figure has no word that stands for one. */
export const unitOf = (id: string, unit: string): string =>
  unit === '1/h' || id === 'flow-50' || id === 'duct-flow-25' ? wordOf(id, unit) : symbol(unit)

/** `95 % likely below 3.0`: never more certain than the numbers are. */
export function likelihood(probability: number, limit: Pick<Limit, 'value'>): string {
  const percent = Math.min(99, Math.max(1, Math.round(100 * probability)))
  const bound = boundText(limit.value)
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
  const where = limit.climateZones && zoneWords(limit.climateZones)
  const place = [[limit.edition, limit.clause].filter(Boolean).join(' '), where, asRead(limit.condition ?? '')].filter(
    Boolean,
  )
  const memory =
    limit.confidence === 'from memory'
      ? ` ${say`Number or clause from memory: look it up.`}`
      : limit.confidence === 'secondary'
        ? ` ${say`From texts that cite it: look it up.`}`
        : ''
  return `${place.join(', ')}. ${limit.caution}${memory}`
}

/** A figure without the factor that a program multiplies by. */
function beforeFactor(found: FigureValue): FigureValue {
  const { value, low, high, factor = 1 } = found
  return low === undefined || high === undefined
    ? { ...found, value: value / factor }
    : { ...found, value: value / factor, low: low / factor, high: high / factor }
}

/** The block of a figure whose limit is not for the test: why, and which limit fits. */
export const withheldLines = (id: string, found: FigureValue, { withheld }: Withheld): VerdictProps => ({
  ...verdictLines(id, found, undefined, []),
  withheld,
  source: withheld,
})

/** The verdict block of a figure with or without a limit; `notes` are said below it. */
export function verdictLines(
  id: string,
  found: FigureValue,
  verdict: Verdict | undefined,
  notes: readonly string[],
): VerdictProps {
  // The drawing and the words are in the unit of the limit, when there is one.
  const decimals = decimalsOf(id, found.unit)
  // The interval is what is believed of the building: before a factor that a program multiplies by.
  const measured = beforeFactor(found)
  const range = rangeOf(measured, decimals)
  const base = {
    value: halfUp(found.value, decimals),
    margin: marginOf(found, decimals),
    unit: id.startsWith('flow-75') ? say`${symbol(found.unit)} at 75 Pa` : unitOf(id, found.unit),
    mostly: mostlyOf(found),
  }
  const span =
    measured.low === undefined || measured.high === undefined
      ? undefined
      : { value: measured.value, low: measured.low, high: measured.high }
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
  const { unadjusted, unsaid } = verdict
  const said = [
    unsaid.length > 0 && conditionSentence(unsaid),
    unadjusted !== undefined &&
      factorSentence(`${halfUp(measured.value, decimals)} ${base.unit}`, `${base.value} ${base.unit}`),
  ].filter((one) => one !== false)
  const flip = roundingFlips(found.value, limit, decimals, 'half-up', found.unit)
  const sameUnit = limit.unit === found.unit
  return {
    ...base,
    interval: span && { ...span, limit: sameUnit ? limit.value : undefined },
    drawn: say`${base.value}, interval ${range}, limit ${boundText(limit.value)} ${base.unit}`,
    verdict: {
      meets: verdict.meets,
      text: `${verdict.meets ? say`Meets the limit` : say`Does not meet the limit`}, ${boundText(limit.value)} ${unitOf(limit.figure, limit.unit)}`,
    },
    likely: probability === undefined ? '' : likelihood(probability, limit),
    reach: reachOf(sameUnit ? rangeOf(measured, decimalsPast(measured, verdict, decimals)) : range, verdict),
    notes: [...said, ...(flip ? [flip.sentence] : []), ...notes],
    source: clauseOf(limit),
  }
}
