/**
 * How often the 95 % limits hold the truth of drawn tests, how wide they are, and how often a limit is met that was said
 * to be met with a chance. SOAK_DRAWS sets how many tests a cell, SOAK_SEED repeats a run, SOAK_PLANS takes the plans
 * whose name it matches. SOAK_ENGINE measures another engine (a checkout, or an engine.js of the package);
 * SOAK_BEFORE sets one beside it, on the same tests.
 */
import type { Row } from '../bench/part.ts'
import { type Bin, type Cell, type Engine, type Id, engineAt, ids, measure, sum } from '../published/coverage.ts'
import { plans, weathers } from '../published/drawn.ts'

const [least, most] = [93, 98]
/** Percent points that a stated chance may be off. */
const apart = 3
/** A bin with fewer verdicts tells nothing. */
const fewest = 200

const names: Record<Id, string> = { 'flow-50': 'Q50', 'flow-4': 'Q4', 'leakage-exponent': 'n' }

const percent = (share: number) => (Number.isNaN(share) ? '-' : (100 * share).toFixed(1))

/** As the tables print it: coverage of Q50, Q4, n, and the half-widths. */
function cellText({ found }: Cell): string {
  const listed = (key: 'coverage' | 'half') => ids.map((id) => percent(found[id][key])).join('/')
  return `${listed('coverage')}  (± ${listed('half')})`
}

function tableOf(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)))
  return rows
    .map((row) =>
      row
        .map((cell, at) => cell.padEnd(widths[at]!))
        .join('  ')
        .trimEnd(),
    )
    .join('\n')
}

/** A share of so many draws is as good as within the band when it is so by two standard deviations. */
const slack = (draws: number) => 2 * Math.sqrt((95 * 5) / draws)

function outside(cells: readonly Cell[], draws: number): string[] {
  return cells.flatMap(({ plan, weather, found }) =>
    ids.flatMap((id) => {
      const held = 100 * found[id].coverage
      if (Number.isNaN(held) || (held >= least - slack(draws) && held <= most + slack(draws))) return []
      return [`${plan.name}, ${weather.name}, ${names[id]}: ${held.toFixed(1)} %`]
    }),
  )
}

interface Chance {
  name: string
  bins: Bin[]
}

const binsOf = (id: Id, cells: readonly Cell[], which: (cell: Cell) => boolean = () => true) =>
  sum(cells.filter(which).map(({ found }) => found[id].bins))

function chancesOf(cells: readonly Cell[]): Chance[] {
  const groups: [name: string, which: (cell: Cell) => boolean][] = [
    ['all', () => true],
    ...weathers.map((weather): [string, (cell: Cell) => boolean] => [weather.name, (cell) => cell.weather === weather]),
    ...plans.map((plan): [string, (cell: Cell) => boolean] => [plan.name, (cell) => cell.plan === plan]),
  ]
  return (['flow-50', 'flow-4'] as const).flatMap((id) =>
    groups.flatMap(([name, which]) => {
      const bins = binsOf(id, cells, which)
      return bins.some(({ count }) => count > 0) ? [{ name: `${names[id]}, ${name}`, bins }] : []
    }),
  )
}

/** How far a bin's true share lies from what was stated, percent points, less two standard deviations of its count. */
function offOf({ count, stated, met }: Bin): number {
  if (count < fewest) return 0
  const [said, was] = [stated / count, met / count]
  return Math.max(0, 100 * (Math.abs(said - was) - 2 * Math.sqrt((said * (1 - said)) / count)))
}

function chanceTable(chances: readonly Chance[]): string {
  const head = [
    'true share in percent, where stated',
    ...Array.from({ length: 10 }, (_, at) => `${10 * at}-${10 * at + 10}`),
  ]
  const rows = chances.map(({ name, bins }) => [
    name,
    ...bins.map((bin) => {
      if (bin.count < fewest) return '-'
      return `${Math.round((100 * bin.met) / bin.count)}${offOf(bin) > apart ? ' !' : ''}`
    }),
  ])
  return tableOf([head, ...rows])
}

function cellsOf(engine: Engine, draws: number, seed: number): Cell[] {
  const named = new RegExp(process.env['SOAK_PLANS'] ?? '')
  return plans.flatMap((plan, at) =>
    named.test(plan.name)
      ? weathers.map((weather, index) => measure(engine, plan, weather, draws, seed + 10 * at + index))
      : [],
  )
}

function coverageTable(lists: readonly { name: string; cells: readonly Cell[] }[]): string {
  const head = ['95 % limits of Q50/Q4/n hold (middle half-width), %', '']
  const rows = lists[0]!.cells.map(({ plan, weather }, at) =>
    [plan.name, weather.name].concat(lists.map(({ cells }) => cellText(cells[at]!))),
  )
  return tableOf([head.concat(lists.map(({ name }) => name)), ...rows])
}

export default async function coverage(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const draws = Number(process.env['SOAK_DRAWS'] ?? 4000)
  const cells = cellsOf(await engineAt(process.env['SOAK_ENGINE']), draws, seed)
  const lists = [{ name: 'now', cells }]
  const before = process.env['SOAK_BEFORE']
  if (before) lists.unshift({ name: 'before', cells: cellsOf(await engineAt(before), draws, seed) })
  console.log(`${coverageTable(lists)}\n`)
  const chances = chancesOf(cells)
  if (chances.length > 0) console.log(`${chanceTable(chances)}\n`)
  else console.log('This engine gives no verdict, so its chances were not looked at.\n')
  const missed = outside(cells, draws)
  for (const line of missed) console.log(`outside ${least} to ${most} %: ${line}`)
  const wrong = chances.filter(({ bins }) => bins.some((bin) => offOf(bin) > apart))
  const refused = cells.reduce((all, cell) => all + cell.refused, 0)
  const all = cells.reduce(
    (count, { found }) => count + ids.filter((id) => !Number.isNaN(found[id].coverage)).length,
    0,
  )
  return [
    { what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' },
    { what: 'tests drawn', value: draws * cells.length, unit: '' },
    { what: 'of them refused by the engine', value: refused, unit: '' },
    { what: 'figures in cells', value: all, unit: '' },
    {
      what: `of them outside ${least} to ${most} %`,
      value: missed.length,
      unit: '',
      aim: 'none',
      met: missed.length === 0,
    },
    {
      what: `lists of chances with a bin over ${apart} points off`,
      value: wrong.length,
      unit: '',
      aim: 'none',
      met: wrong.length === 0,
    },
  ]
}
