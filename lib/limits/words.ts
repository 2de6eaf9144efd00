/** Every sentence about limits, in one place. */
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import { sideOf } from '../units/same.ts'
import { convert } from '../units/convert.ts'
import type { Limit } from './schema.ts'
import { say } from '../words/say.ts'

export type Sentence = {
  code:
    | 'meets'
    | 'misses'
    | 'condition'
    | 'factor'
    | 'probability'
    | 'below'
    | 'between'
    | 'above'
    | 'secondary'
    | 'from-memory'
    | 'caution'
  text: string
}

type Facts = {
  limit: Limit
  meets: boolean
  value: number
  unadjusted?: number
  probability?: number
  guarded?: 'below' | 'between' | 'above'
  unsaid: readonly string[]
}

/** Numbers that agree so far are equal: see lib/units/same.ts. */
const MOST_DECIMALS = 12

const decimalsOf = (text: string): number => text.split('.')[1]?.length ?? 0

const halfUp = (value: number, decimals: number): string => write(value, { decimals, rounding: 'half-up' })

/** The number with as many decimals as it takes to see on which side of the limit it lies. */
function telling(value: number, bound: number): string {
  const start = decimalsOf(write(Number(bound.toPrecision(6)))) + 2
  let decimals = start
  while (decimals < MOST_DECIMALS && sideOf(Number(halfUp(value, decimals)), bound) !== sideOf(value, bound)) {
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

/** A limit's number as codes print it: with at least one decimal, `4.0` beside a result of `8.0`. */
export const boundText = (value: number): string =>
  Number.isInteger(value) && value < 100 ? value.toFixed(1) : String(value)

function limitText(limit: Limit): string {
  const bound = withUnit(boundText(limit.value), limit.unit, limit.figure)
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
export function verdictSentences({ limit, meets, value, unadjusted, probability, guarded, unsaid }: Facts): Sentence[] {
  const number = withUnit(telling(value, limit.value), limit.unit, limit.figure)
  const sentences: Sentence[] = [
    {
      code: meets ? 'meets' : 'misses',
      text: meets
        ? say`${number} meets the limit, ${limitText(limit)} (${place(limit)}).`
        : say`${number} does not meet the limit, ${limitText(limit)} (${place(limit)}).`,
    },
  ]
  if (unsaid.length > 0) sentences.push({ code: 'condition', text: conditionSentence(unsaid) })
  if (unadjusted !== undefined) {
    const before = withUnit(telling(unadjusted, limit.value), limit.unit, limit.figure)
    sentences.push({ code: 'factor', text: factorSentence(before, number) })
  }
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
  if (limit.confidence === 'secondary') {
    sentences.push({
      code: 'secondary',
      text: say`This number is from texts that cite the code: look it up before you rely on it.`,
    })
  }
  sentences.push({ code: 'caution', text: limit.caution })
  return sentences
}

/** What a verdict rests on that the test does not say. */
export const conditionSentence = (unsaid: readonly string[]): string =>
  say`The verdict holds only for ${unsaid.join('; ')}: the test does not say so.`

/** Both numbers of a figure that a program's factor multiplies. */
export const factorSentence = (before: string, after: string): string =>
  say`${before} was measured; multiplied by the one-point factor it is ${after}. The chance is of what was measured.`

/** Why there is no verdict, and which limit fits. */
export const withheldSentence = (reason: string, other: Limit | undefined): string =>
  other === undefined
    ? say`No verdict. ${reason} No published limit fits: choose one of your own.`
    : say`No verdict. ${reason} This one fits: ${other.title}.`

type FlipFacts = { value: number; unit: string; rounded: string; roundedMeets: boolean; limit: Limit }

/** Why the rounded number must not be trusted alone. */
export function flipSentence({ value, unit, rounded, roundedMeets, limit }: FlipFacts): string {
  const exact = telling(value, convert(limit.value, limit.unit, unit))
  const written = withUnit(rounded, unit, limit.figure)
  return roundedMeets
    ? say`Rounded, ${written} would meet the limit, ${limitText(limit)}; the unrounded ${exact} does not meet it. The unrounded number decides.`
    : say`Rounded, ${written} would not meet the limit, ${limitText(limit)}; the unrounded ${exact} meets it. The unrounded number decides.`
}
