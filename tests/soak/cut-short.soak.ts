/** Every disturbance at every step of a fill. SOAK_ONLY runs one of them, by a part of its name. */
import { CutShort, disturbances, steps } from '../browser/cut-short.ts'
import type { Row } from '../bench/part.ts'

export default async function cutShort(): Promise<Row[]> {
  const only = process.env['SOAK_ONLY'] ?? ''
  const cut = new CutShort()
  const rows: Row[] = []
  await cut.start()
  try {
    for (const how of disturbances.filter((each) => each.includes(only))) {
      let wrong = 0
      for (const step of steps) {
        const found = await cut.run(how, step).catch((error: unknown) => [`${how} at step ${step}: ${String(error)}`])
        for (const line of found) console.error(`  ${line}`)
        wrong += found.length === 0 ? 0 : 1
      }
      rows.push({
        what: `${how}: untrue at how many of ${steps.length} steps`,
        value: wrong,
        unit: '',
        aim: 'none',
        met: wrong === 0,
      })
    }
    return rows
  } finally {
    await cut.close()
  }
}
