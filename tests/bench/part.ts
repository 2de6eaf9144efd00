/** Parts of `npm run bench` and `npm run soak`: each file exports a default function that returns rows of one table. */
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { arch, availableParallelism, type } from 'node:os'
import { basename } from 'node:path'
import { fileURLToPath } from 'node:url'

export interface Row {
  what: string
  value: number
  /** 'µs', 'x' for a ratio, … */
  unit: string
  /** What is hoped for, in words. */
  aim?: string
  /** Whether the aim is met; left out where there is none. */
  met?: boolean
}

export type Part = () => Row[] | Promise<Row[]>

/** The rows of a part, with the day and the machine they were measured on. */
export interface Kept {
  date: string
  machine: string
  rows: Row[]
}

/** A number at three significant digits, or whole. */
export const text = (value: number) =>
  Math.abs(value) >= 1000 || Number.isInteger(value)
    ? Math.round(value).toLocaleString('en-US')
    : String(Number(value.toPrecision(3)))

function table(results: Readonly<Record<string, readonly Row[]>>): string {
  const rows = Object.entries(results).flatMap(([part, all]) => all.map((row) => ({ part, ...row })))
  const cells = rows.map(({ part, what, value, unit, aim = '', met }) => [
    part,
    what,
    text(value),
    unit,
    aim,
    met === undefined ? '' : met ? 'met' : 'NOT MET',
  ])
  const widths = [0, 1, 2, 3, 4, 5].map((column) => Math.max(...cells.map((row) => row[column]!.length)))
  return cells
    .map((row) => row.map((cell, at) => (at === 2 ? cell.padStart(widths[at]!) : cell.padEnd(widths[at]!))).join('  '))
    .map((line) => `  ${line.trimEnd()}`)
    .join('\n')
}

/**
 * Runs every part of a folder, or those named on the command line, one after the other; then prints one table
 * of all rows and writes them into .output.
 *
 * @param kind ending of the files and name of the result: 'bench' or 'soak'
 * @param words names of parts; `--keep` also writes the rows into results.json of the folder, for tests/bench/README.md
 * @returns whether every part ran to its end and no aim of a soak was missed
 */
export async function runParts(kind: 'bench' | 'soak', words: readonly string[]): Promise<boolean> {
  const keep = words.includes('--keep')
  const named = words.filter((word) => word !== '--keep')
  const folder = new URL(`../${kind}/`, import.meta.url)
  const files = readdirSync(folder)
    .filter((file) => file.endsWith(`.${kind}.ts`))
    .toSorted()
  const wanted = files.filter((file) => named.length === 0 || named.includes(basename(file, `.${kind}.ts`)))
  const results: Record<string, Row[]> = {}
  let well = wanted.length > 0
  if (!well) console.error(`No such part. There are: ${files.map((file) => basename(file, `.${kind}.ts`)).join(', ')}.`)
  for (const file of wanted) {
    const name = basename(file, `.${kind}.ts`)
    const started = Date.now()
    try {
      const { default: part } = (await import(new URL(file, folder).href)) as { default: Part }
      const rows = await part()
      results[name] = rows
      console.log(`${name}: measured in ${Math.round((Date.now() - started) / 1000)} s`)
      if (kind === 'soak' && rows.some(({ met }) => met === false)) well = false
    } catch (error) {
      console.error(`${name} did not come to its end:`, error)
      well = false
    }
  }
  if (Object.keys(results).length > 0) console.log(`\n${table(results)}`)
  const output = new URL('../../.output/', import.meta.url)
  mkdirSync(output, { recursive: true })
  write(new URL(`${kind}.json`, output), results)
  if (keep) write(new URL('results.json', folder), results)
  return well
}

/** Puts the parts of this run beside those that the file has of others. */
function write(file: URL, results: Record<string, Row[]>): void {
  const before = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Record<string, Kept>) : {}
  const date = new Date().toISOString().slice(0, 10)
  const machine = `${availableParallelism()} cores, ${arch()}, ${type()}, Node ${process.versions.node}`
  const now = Object.entries(results).map(([part, rows]): [string, Kept] => [part, { date, machine, rows }])
  const all = Object.fromEntries(Object.entries({ ...before, ...Object.fromEntries(now) }).toSorted())
  writeFileSync(file, `${JSON.stringify(all, null, 2)}\n`)
  console.log(`\nWritten to ${fileURLToPath(file)}`)
}
