/** How often an engine's 95 % limits hold the truth of drawn tests, how wide they are, and how true its chances come. */
import { statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Limit } from '../../lib/limits/schema.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { type Plan, type Truth, type Weather, source, tests, trueFlow } from './drawn.ts'

interface Figure {
  value: number
  unit: string
  low?: number | undefined
  high?: number | undefined
}

export interface Engine {
  reduce(sheet: Sheet): { figures: Record<string, Figure | undefined> }
  /** Left out where an engine gives no verdict. */
  verdict?: ((figure: never, limit: Limit) => object) | undefined
}

const load = async (file: string) => (await import(pathToFileURL(file).href)) as Engine

/**
 * An engine to be measured.
 *
 * @param path of a checkout of this repository, or of an engine.js of the package; this checkout when left out
 */
export async function engineAt(path?: string): Promise<Engine> {
  const at = resolve(path ?? join(import.meta.dirname, '../..'))
  if (!statSync(at).isDirectory()) return load(at)
  const { reduce } = await load(join(at, 'lib/reduce/reduce.ts'))
  const { verdict } = await load(join(at, 'lib/limits/verdict.ts'))
  return { reduce, verdict }
}

export const measured = {
  'flow-50': (truth: Truth) => trueFlow(truth, 50),
  'flow-4': (truth: Truth) => trueFlow(truth, 4),
  'leakage-exponent': ({ exponent }: Truth) => exponent,
}

export type Id = keyof typeof measured
export const ids = Object.keys(measured) as Id[]

/** Chances of meeting a limit, in ten bins by what was stated. */
export interface Bin {
  count: number
  stated: number
  met: number
}

const bins = (): Bin[] => Array.from({ length: 10 }, () => ({ count: 0, stated: 0, met: 0 }))

export interface Found {
  /** Share of the limits that hold the truth; NaN where a figure shows none. */
  coverage: number
  /** Middle half-width, as a share of the truth. */
  half: number
  /** Of `flow-50` and `flow-4` alone. */
  bins: Bin[]
}

export interface Cell {
  plan: Plan
  weather: Weather
  found: Record<Id, Found>
  /** Tests that the engine refused. */
  refused: number
}

const middle = (list: number[]) => list.toSorted((a, b) => a - b)[list.length >> 1] ?? Number.NaN

function limitOf(figure: string, value: number, unit: string): Limit {
  return {
    id: 'own',
    title: 'drawn',
    edition: '',
    clause: '',
    subject: 'enclosure',
    figure,
    unit,
    value,
    comparison: '<=',
    confidence: 'own',
    checked: '',
    caution: '',
  }
}

/** Limits a test is held against, for each figure: each is a test of its own, with the same noise. */
const limitsEach = 4

/** Limits lie evenly within so many standard deviations of what was found, on either side of the truth. */
const reach = 4

interface Case {
  truth: number
  figure: Figure
}

/** The standard deviation of what was found about the truth, in logarithms. */
function spreadOf(cases: readonly Case[]): number {
  const squares = cases.map(({ truth, figure }) => Math.log(figure.value / truth) ** 2)
  return Math.sqrt(squares.reduce((all, square) => all + square, 0) / squares.length)
}

function chances(id: Id, cases: readonly Case[], verdict: Engine['verdict'], even: () => number): Bin[] {
  const all = bins()
  if (!verdict || id === 'leakage-exponent' || cases.length === 0) return all
  const spread = spreadOf(cases)
  for (const { truth, figure } of cases) {
    for (let turn = 0; turn < limitsEach; turn++) {
      const limit = truth * Math.exp(reach * spread * (2 * even() - 1))
      const { probability } = verdict(figure as never, limitOf(id, limit, figure.unit)) as { probability?: number }
      if (probability === undefined) continue
      const bin = all[Math.min(9, Math.floor(10 * probability))]!
      bin.count++
      bin.stated += probability
      if (truth <= limit) bin.met++
    }
  }
  return all
}

/**
 * Draws one plan in one weather.
 *
 * @param draws how many tests
 */
export function measure(engine: Engine, plan: Plan, weather: Weather, draws: number, seed: number): Cell {
  const draw = tests(plan, weather, seed)
  const { even } = source(~seed)
  const cases: Record<Id, Case[]> = { 'flow-50': [], 'flow-4': [], 'leakage-exponent': [] }
  let refused = 0
  for (let turn = 0; turn < draws; turn++) {
    const { sheet, truth } = draw()
    let figures: Record<string, Figure | undefined>
    try {
      ;({ figures } = engine.reduce(sheet))
    } catch {
      refused++
      continue
    }
    for (const id of ids) {
      const figure = figures[id]
      if (figure?.low !== undefined) cases[id].push({ truth: measured[id](truth), figure })
    }
  }
  const found = Object.fromEntries(
    ids.map((id): [Id, Found] => {
      const list = cases[id]
      const held = list.filter(({ truth, figure: { low, high } }) => low! <= truth && truth <= high!).length
      const half = middle(list.map(({ truth, figure: { low, high } }) => (high! - low!) / 2 / truth))
      return [id, { coverage: held / list.length, half, bins: chances(id, list, engine.verdict, even) }]
    }),
  ) as Record<Id, Found>
  return { plan, weather, found, refused }
}

/** Bins of several cells, added. */
export function sum(lists: readonly (readonly Bin[])[]): Bin[] {
  const all = bins()
  for (const list of lists) {
    for (const [at, { count, stated, met }] of list.entries()) {
      all[at]!.count += count
      all[at]!.stated += stated
      all[at]!.met += met
    }
  }
  return all
}
