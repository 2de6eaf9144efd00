/** 100,000 sheets of every kind: each is a report of finite numbers or a SheetError, and none takes long. */
import * as fc from 'fast-check'
import type { Row } from '../bench/part.ts'
import { anySheets, brokenSheets, closeSheets, outcomeOf, shownSheets, wildSheets } from '../reduce/wild.ts'

const kinds: [name: string, sheets: fc.Arbitrary<unknown>, count: number][] = [
  ['numbers of any kind', wildSheets, 10_000],
  ['numbers that a gauge could show', shownSheets, 45_000],
  ['one place of a sheet holds anything', brokenSheets, 35_000],
  ['pressures close together, flows of any size', closeSheets, 5000],
  ['anything at all', anySheets, 5000],
]

/** Processor time in ms: what else the machine does counts little. */
function spent(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

export default function engine(): Row[] {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const rows: Row[] = [{ what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' }]
  let sheets = 0
  let wrong = 0
  let longest = 0
  for (const [name, arbitrary, count] of kinds) {
    const found = { report: 0, refused: 0 }
    const result = fc.check(
      fc.property(arbitrary, (sheet) => {
        const start = spent()
        const outcome = outcomeOf(sheet)
        longest = Math.max(longest, spent() - start)
        if (outcome !== 'report' && outcome !== 'refused') throw new Error(outcome)
        found[outcome]++
      }),
      { numRuns: count, seed },
    )
    sheets += result.numRuns
    if (result.failed) {
      wrong++
      console.error(fc.defaultReportMessage(result))
    }
    rows.push({ what: `${name}: reports`, value: found.report, unit: '' })
    rows.push({ what: `${name}: refused`, value: found.refused, unit: '' })
  }
  rows.push({ what: 'sheets', value: sheets, unit: '', aim: 'at least 100,000', met: sheets >= 100_000 })
  rows.push({
    what: 'kinds with NaN, Infinity or another error',
    value: wrong,
    unit: '',
    aim: 'none',
    met: wrong === 0,
  })
  rows.push({ what: 'longest sheet', value: longest, unit: 'ms', aim: 'under 1,000', met: longest < 1000 })
  return rows
}
