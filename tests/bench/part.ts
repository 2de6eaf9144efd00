/** Parts of `npm run bench` and `npm run soak`: each file exports a default function that returns rows of one table. */
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs'
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

/** A number at three significant digits, or whole. */
const text = (value: number) =>
  Math.abs(value) >= 1000 || Number.isInteger(value)
    ? Math.round(value).toLocaleString('en-US')
    : String(Number(value.toPrecision(3)))

function table(rows: readonly Row[]): string {
  const cells = rows.map(({ what, value, unit, aim = '', met }) => [
    what,
    text(value),
    unit,
    aim,
    met === undefined ? '' : met ? 'met' : 'NOT MET',
  ])
  const widths = [0, 1, 2, 3, 4].map((column) => Math.max(...cells.map((row) => row[column]!.length)))
  return cells
    .map((row) => row.map((cell, at) => (at === 1 ? cell.padStart(widths[at]!) : cell.padEnd(widths[at]!))).join('  '))
    .map((line) => `  ${line.trimEnd()}`)
    .join('\n')
}

/**
 * Runs every part of a folder, or those named on the command line, one after the other; prints a table of each and
 * writes all rows into .output.
 *
 * @param kind ending of the files and name of the result: 'bench' or 'soak'
 * @returns whether every part ran to its end and no aim of a soak was missed
 */
export async function runParts(kind: 'bench' | 'soak', named: readonly string[]): Promise<boolean> {
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
    console.log(`\n${name}`)
    try {
      const { default: part } = (await import(new URL(file, folder).href)) as { default: Part }
      const rows = await part()
      results[name] = rows
      console.log(table(rows))
      if (kind === 'soak' && rows.some(({ met }) => met === false)) well = false
    } catch (error) {
      console.error(error)
      well = false
    }
  }
  const output = new URL('../../.output/', import.meta.url)
  mkdirSync(output, { recursive: true })
  const about = { date: new Date().toISOString(), node: process.version, parts: results }
  writeFileSync(new URL(`${kind}.json`, output), `${JSON.stringify(about, null, 2)}\n`)
  console.log(`\nWritten to ${fileURLToPath(new URL(`${kind}.json`, output))}`)
  return well
}
