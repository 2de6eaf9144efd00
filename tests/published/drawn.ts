/**
 * Tests of a house that is known, drawn reading by reading, to see how often what is stated about them is true. Nothing
 * of the engine is used here: flow through the leaks is `Q = C * P^n`, noise is normal by Box and Muller's transform.
 * The sizes of noise and drift, and a gauge of 1 % or 0.25 Pa with a flow of 5 %, are common practice, no source.
 */
import { generator } from '../random.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'

/** Standard deviations: of one reading's pressure (Pa) and flow (share), of one baseline reading and of its drift (Pa). */
export interface Weather {
  name: string
  pressure: number
  flow: number
  baseline: number
  drift: number
}

export const weathers: readonly Weather[] = [
  { name: 'calm', pressure: 0.2, flow: 0.005, baseline: 0.2, drift: 0.2 },
  { name: 'breezy', pressure: 0.7, flow: 0.01, baseline: 0.7, drift: 0.7 },
  { name: 'windy', pressure: 2, flow: 0.02, baseline: 2, drift: 2 },
]

/** How a test is made. */
export interface Plan {
  name: string
  procedure: Sheet['procedure']
  /** Pressures aimed at, Pa, in the order they are taken. */
  pressures: readonly number[]
  /** Readings at each of them. */
  repeats: number
  /** Ranges of the device, the largest for the first pressures. */
  ranges: number
  /** Baseline readings before, and after. */
  baselines: readonly [before: number, after: number]
  /** Seconds that each baseline reading and each reading was averaged; one as long as the other when left out. */
  averaging?: { baseline: number; reading: number }
  /** Whether the scatter of a reading is typed, as where the baseline shows none. */
  scatter?: true
  line?: Sheet['line']
  /** Several fans at once: how the flow parts among them. Below 30 Pa the first alone runs. */
  fans?: readonly number[]
}

/** Halves of the 95 % figures of a certificate: the gauge's error is one for all its readings, the flow's one for each range. */
const gauge = { share: 0.01 / 2, floor: 0.25 / 2 }
const flowShare = 0.05 / 2

export interface Truth {
  /** m3/h per Pa^n. */
  coefficient: number
  exponent: number
}

export interface Drawn {
  sheet: Sheet
  truth: Truth
}

/** The flow that really passes the leaks at a pressure, m3/h. */
export const trueFlow = ({ coefficient, exponent }: Truth, pressure: number): number =>
  coefficient * pressure ** exponent

/** Normal numbers, mean 0 and standard deviation 1, always the same for a seed; and even ones from 0 to 1. */
export function source(seed: number): { normal(): number; even(): number } {
  const even = generator(seed)
  return { even, normal: () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even()) }
}

/** What a range of the device is typed as, m3/h and Pa: its flow error is in what it gives, not in these. */
const rangeOf = (number: number) => ({ coefficient: 120 / 2 ** number, exponent: 0.5 })

const rangeName = (number: number) => String.fromCodePoint(65 + number)

const list = <Item>(length: number, item: () => Item): Item[] => Array.from({ length }, item)

/**
 * Draws houses and a test of each.
 *
 * The baseline drifts evenly from before to after by a normal amount; readings are taken at even times between, in their
 * order. A reading differs from what stands then by its own noise, and by the gauge's error: one normal number for a
 * whole test, times half of what the certificate gives at that pressure. A baseline reading has noise alone. The
 * exponent of the house has a standard deviation of 0.05 about 0.65. What the weather gives is the noise of a reading; a
 * baseline reading that is averaged longer has less, by the root of the time.
 *
 * @param noise 1; 0 for tests without any error
 */
export function tests(plan: Plan, weather: Weather, seed: number, noise = 1): () => Drawn {
  const { normal, even } = source(seed)
  const much = (sd: number) => noise * sd * normal()
  const { averaging, scatter, line } = plan
  const baselineNoise = weather.baseline * (averaging ? Math.sqrt(averaging.reading / averaging.baseline) : 1)
  return () => {
    const truth = {
      exponent: Math.min(0.95, Math.max(0.5, 0.65 + 0.05 * normal())),
      coefficient: 40 + 60 * even(),
    }
    const first = -1 + 0.5 * normal()
    const drift = much(weather.drift)
    const gaugeError = much(1)
    const flowErrors = list(plan.ranges, () => much(flowShare))
    const fanErrors = (plan.fans ?? []).map(() => much(flowShare))
    const aimed = plan.pressures.flatMap((pressure) => list(plan.repeats, () => pressure))
    const times = list(aimed.length, even).toSorted((a, b) => a - b)
    const readings = aimed.map((aim, index) => {
      const range = Math.floor((index * plan.ranges) / aimed.length)
      const pressure = aim + even() - 0.5
      const flow = trueFlow(truth, pressure) * (plan.fans ? 1 : 1 + flowErrors[range]!) * (1 + much(weather.flow))
      const error = gaugeError * Math.max(gauge.share * pressure, gauge.floor)
      const shown = first + drift * times[index]! - (pressure + error + much(weather.pressure))
      if (plan.fans) {
        const shares = aim < 30 ? [1] : plan.fans
        const fans = shares.map((share, at) => ({ name: `fan ${at}`, flow: share * flow * (1 + fanErrors[at]!) }))
        return { pressure: shown, flow: fans.reduce((sum, fan) => sum + fan.flow, 0), fans }
      }
      if (plan.ranges === 1) return { pressure: shown, flow }
      const { coefficient, exponent } = rangeOf(range)
      return { pressure: shown, devicePressure: (flow / coefficient) ** (1 / exponent), range: rangeName(range) }
    })
    const sheet: Sheet = {
      subject: 'enclosure',
      procedure: plan.procedure,
      direction: 'depressurize',
      units: { flow: 'm3/h', temperature: 'degC', length: 'm' },
      flowBasis: 'actual',
      baseline: {
        before: list(plan.baselines[0], () => first + much(baselineNoise)),
        after: list(plan.baselines[1], () => first + drift + much(baselineNoise)),
      },
      points: readings,
      ...(plan.ranges > 1 && {
        device: {
          ranges: Object.fromEntries(list(plan.ranges, () => 0).map((_, at) => [rangeName(at), rangeOf(at)])),
        },
      }),
      ...(averaging && { averaging }),
      ...(scatter && { pressureScatter: weather.pressure }),
      ...(line && { line }),
      instrument: { pressurePercent: 1, pressureFloor: 0.25, flowPercent: 5 },
    }
    return { sheet, truth }
  }
}

const steps = (...pressures: number[]) => pressures
const e779 = { 3: steps(60, 35, 15), 5: steps(60, 48, 36, 24, 12), 7: steps(60, 52, 44, 36, 28, 20, 12) }
const iso = steps(60, 55, 50, 45, 40, 35, 30, 25, 20, 15)

const plan = (
  name: string,
  procedure: Sheet['procedure'],
  pressures: readonly number[],
  repeats = 1,
  ranges = 1,
): Omit<Plan, 'baselines'> => ({ name, procedure, pressures, repeats, ranges })

const without = [
  plan('one point, 1 reading', 'one-point', [50]),
  plan('one point, 5 readings', 'one-point', [50], 5),
  plan('two points, 1 + 1', 'two-point', [50, 12.5]),
  plan('two points, 5 + 5', 'two-point', [50, 12.5], 5),
  plan('two points, 1 + 1, 2 ranges', 'two-point', [50, 12.5], 1, 2),
  plan('two points, 5 + 5, 2 ranges', 'two-point', [50, 12.5], 5, 2),
  plan('E779, 3 points', 'astm-e779', e779[3]),
  plan('E779, 5 points', 'astm-e779', e779[5]),
  plan('E779, 7 points', 'astm-e779', e779[7]),
  plan('E779, 7 points, 2 ranges', 'astm-e779', e779[7], 1, 2),
  plan('E779, 7 points, 3 ranges', 'astm-e779', e779[7], 1, 3),
  plan('ISO 9972, 10 points', 'iso-9972', iso),
  plan('ISO 9972, 10 points, 3 ranges', 'iso-9972', iso, 1, 3),
]

const withBaselines = (one: Omit<Plan, 'baselines'>, count: number): Plan => ({
  ...one,
  name: `${one.name}, baseline ${count} + ${count}`,
  baselines: [count, count],
})

const again = (name: string, said: string, count: number, more: Partial<Plan>): Plan => {
  const one = withBaselines(
    without.find((other) => other.name === name)!,
    count,
  )
  return { ...one, ...more, name: `${one.name}, ${said}` }
}

const minute = { averaging: { baseline: 60, reading: 10 } }

/**
 * Every test with five baseline readings on either side, and with one; some with a baseline that is averaged longer, with
 * the scatter typed, with the weighted line, and with several fans at once.
 */
export const plans: readonly Plan[] = [
  ...[5, 1].flatMap((count) => without.map((one) => withBaselines(one, count))),
  again('one point, 1 reading', 'averaged 60 and 10 s', 5, minute),
  again('two points, 1 + 1', 'averaged 60 and 10 s', 5, minute),
  again('one point, 1 reading', 'scatter typed', 1, { scatter: true }),
  again('two points, 1 + 1', 'scatter typed', 1, { scatter: true }),
  again('E779, 7 points', 'scatter typed', 1, { scatter: true }),
  again('ISO 9972, 10 points', 'scatter typed', 1, { scatter: true }),
  again('one point, 1 reading', 'two fans', 5, { fans: [0.6, 0.4] }),
  again('E779, 7 points', 'three fans', 5, { fans: [0.5, 0.3, 0.2] }),
  again('E779, 7 points', 'weighted line', 5, { line: 'weighted' }),
  again('E779, 7 points, 3 ranges', 'weighted line', 5, { line: 'weighted' }),
  again('ISO 9972, 10 points', 'weighted line', 5, { line: 'weighted' }),
]
