/**
 * The dock in a room of its own: a page that reads in every way, plan after plan, and one that covers the dock in every
 * way, press after press. SOAK_SEED repeats a run; SOAK_PLANS and SOAK_PRESSES set how many.
 */
import { pressUnder } from '../browser/pressing.ts'
import { readPlans } from '../browser/reading.ts'
import type { Row } from '../bench/part.ts'

const log = (what: string) => (done: number) => {
  if (done % 50 === 0) console.log(`  ${done} ${what}`)
}

const none = (what: string, value: number): Row => ({ what, value, unit: '', aim: 'none', met: value === 0 })

export default async function room(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const plans = Number(process.env['SOAK_PLANS'] ?? 1000)
  const presses = Number(process.env['SOAK_PRESSES'] ?? 1000)
  const learnt = plans > 0 ? await readPlans(seed, plans, log('plans')) : []
  const pressed = presses > 0 ? await pressUnder(seed, presses, log('presses')) : undefined
  for (const line of [...learnt, ...(pressed?.wrong ?? [])].slice(0, 30)) console.error(`  ${line}`)
  return [
    { what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' },
    none(`plans of ${plans} of which the page learnt something`, learnt.length),
    ...(pressed
      ? [
          none(`presses of ${presses} that got through a cover`, pressed.wrong.length),
          { what: 'presses answered with why they do not count', value: pressed.refused, unit: '' },
          { what: 'presses that filled, the dock on top', value: pressed.counted, unit: '' },
        ]
      : []),
  ]
}
