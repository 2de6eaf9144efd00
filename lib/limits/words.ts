/** Every sentence about limits, in one place. */
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import type { Limit } from './schema.ts'
import { say } from '../words/say.ts'

export type Sentence = {
  code: 'meets' | 'misses' | 'probability' | 'below' | 'between' | 'above' | 'from-memory' | 'caution'
  text: string
}

type Facts = {
  limit: Limit
  meets: boolean
  value: number
  probability?: number
  guarded?: 'below' | 'between' | 'above'
}

/** At this many decimals a double shows all it holds, for figures of ordinary size. */
const MOST_DECIMALS = 15

const decimalsOf = (text: string): number => text.split('.')[1]?.length ?? 0

const halfUp = (value: number, decimals: number): string => write(value, { decimals, rounding: 'half-up' })

/** The number with as many decimals as it takes to see on which side of the limit it lies. */
function telling(value: number, limit: Limit): string {
  let decimals = decimalsOf(String(limit.value)) + 2
  while (
    decimals < MOST_DECIMALS &&
    Math.sign(Number(halfUp(value, decimals)) - limit.value) !== Math.sign(value - limit.value)
  ) {
    decimals += 1
  }
  return halfUp(value, decimals)
}

function unitText(unit: string, figure: string): string {
  const pressure = /-(4|10|25|50|75)(?:-|$)/.exec(figure)?.[1] ?? ''
  if (unit === '1/h' && figure === 'air-changes-50') return 'ACH50'
  return symbol(unit).replace(/^cfm/, `cfm${pressure}`)
}

const withUnit = (number: string, unit: string, figure: string): string => `${number} ${unitText(unit, figure)}`.trim()

const place = (limit: Limit): string =>
  [[limit.edition, limit.clause].filter(Boolean).join(', '), limit.condition].filter(Boolean).join('; ')

function limitText(limit: Limit): string {
  const bound = withUnit(String(limit.value), limit.unit, limit.figure)
  return limit.comparison === '<' ? say`less than ${bound}` : say`at most ${bound}`
}

function chance(probability: number): string {
  if (probability > 0.999) return say`more than 99.9 %`
  if (probability < 0.001) return say`less than 0.1 %`
  const decimals = probability > 0.99 || probability < 0.01 ? 1 : 0
  return `${halfUp(100 * probability, decimals)} %`
}

const guardWords = {
  below: say`The whole 95 % interval lies within the limit.`,
  between: say`The limit lies inside the 95 % interval: a repeated test may come out on the other side.`,
  above: say`The whole 95 % interval lies beyond the limit.`,
}

/** The sentences of a verdict, in the order they are read: the code's verdict first, the confidence beside it. */
export function verdictSentences({ limit, meets, value, probability, guarded }: Facts): Sentence[] {
  const number = withUnit(telling(value, limit), limit.unit, limit.figure)
  const sentences: Sentence[] = [
    {
      code: meets ? 'meets' : 'misses',
      text: meets
        ? say`${number} meets the limit, ${limitText(limit)} (${place(limit)}).`
        : say`${number} does not meet the limit, ${limitText(limit)} (${place(limit)}).`,
    },
  ]
  if (probability !== undefined) {
    sentences.push({
      code: 'probability',
      text: say`Chance that the true value meets it, from the uncertainty of the test: ${chance(probability)}.`,
    })
  }
  if (guarded) sentences.push({ code: guarded, text: guardWords[guarded] })
  if (limit.confidence === 'from memory') {
    sentences.push({
      code: 'from-memory',
      text: say`This number or its clause is from memory: look it up before you rely on it.`,
    })
  }
  sentences.push({ code: 'caution', text: limit.caution })
  return sentences
}

type FlipFacts = { value: number; unit: string; rounded: string; roundedMeets: boolean; limit: Limit }

/** Why the rounded number must not be trusted alone. */
export function flipSentence({ value, unit, rounded, roundedMeets, limit }: FlipFacts): string {
  const exact = unit === limit.unit ? telling(value, limit) : String(value)
  const written = withUnit(rounded, unit, limit.figure)
  return roundedMeets
    ? say`Rounded, ${written} would meet the limit, ${limitText(limit)}; the unrounded ${exact} does not meet it. The unrounded number decides.`
    : say`Rounded, ${written} would not meet the limit, ${limitText(limit)}; the unrounded ${exact} meets it. The unrounded number decides.`
}
