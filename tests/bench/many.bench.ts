/**
 * From the press on "Fill this page" in the popup to the plan on a page of 20,000 controls, with those that are bound far
 * apart among them, and on the same page without the others. BENCH_ROWS sets how many there are.
 */
import { launch } from '../browser/harness.ts'
import { Attacked } from '../browser/hostile.ts'
import type { Row } from './part.ts'
import { median, pressToPlan, type PlanTimes } from './press-to-plan.ts'

const rounds = Number(process.env['BENCH_ROUNDS'] ?? 5)
const rows = Number(process.env['BENCH_ROWS'] ?? 20_000)

export default async function many(): Promise<Row[]> {
  const attacked = new Attacked()
  await attacked.start(launch)
  const once = async (count: number): Promise<PlanTimes> =>
    pressToPlan(attacked, await attacked.visit('rows', `&rows=${count}`), 60_000)
  try {
    const times: [PlanTimes[], PlanTimes[]] = [[], []]
    for (let round = 0; round < rounds; round++) {
      times[0].push(await once(rows))
      times[1].push(await once(0))
    }
    const [first, whole] = [median(times[0].map((one) => one.first)), median(times[0].map((one) => one.whole))]
    return [
      {
        what: `from the press to the first lines of the plan, ${rows.toLocaleString('en-US')} controls`,
        value: first,
        unit: 'ms',
        aim: 'at most 2,000',
        met: first <= 2000,
      },
      { what: 'to the whole plan', value: whole, unit: 'ms' },
      { what: 'the same without the others', value: median(times[1].map((one) => one.whole)), unit: 'ms' },
    ]
  } finally {
    await attacked.close()
  }
}
