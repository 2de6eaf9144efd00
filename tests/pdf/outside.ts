/** Readers of PDF files that share nothing with this project: qpdf and poppler, as Debian packages them. */
import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const packages = { qpdf: 'qpdf', pdftotext: 'poppler-utils', pdftoppm: 'poppler-utils' } as const
type Tool = keyof typeof packages

const found = new Set<Tool>()

/** Sees that a reader is there; on Debian, as root, a missing one is installed, as browsers are. */
function need(tool: Tool): void {
  if (found.has(tool)) return
  const there = () => spawnSync(tool, ['-v']).error === undefined
  if (!there() && existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    const quiet = { env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }, stdio: 'inherit' as const }
    spawnSync('apt-get', ['update', '-q'], quiet)
    spawnSync('apt-get', ['install', '-q', '-y', '--no-install-recommends', packages[tool]], quiet)
  }
  if (!there()) throw new Error(`No ${tool} was found: install ${packages[tool]} in the usual way of your system.`)
  found.add(tool)
}

const folder = mkdtempSync(join(tmpdir(), 'pdf-'))
let count = 0

/** Writes bytes to a file of their own. */
export function onDisk(bytes: Uint8Array): string {
  const path = join(folder, `${++count}.pdf`)
  writeFileSync(path, bytes)
  return path
}

/** Makes a file of another with qpdf. */
export function remade(bytes: Uint8Array, ...how: string[]): Uint8Array {
  need('qpdf')
  const to = join(folder, `${++count}-made.pdf`)
  execFileSync('qpdf', [...how, onDisk(bytes), to])
  return readFileSync(to)
}

/** What qpdf has to say against a file; empty when nothing. */
export function faults(bytes: Uint8Array): string {
  need('qpdf')
  const { status, stdout, stderr } = spawnSync('qpdf', ['--check', onDisk(bytes)], { encoding: 'utf8' })
  return status === 0 ? '' : `${stdout}${stderr}`
}

interface Told {
  acroform: {
    fields: { fullname: string; value: unknown; fieldtype: string; annotation: { appearancestate: string } }[]
  }
}

/** The value of every field by its full name, as qpdf reads it: `u:` texts as they are, names with their stroke. */
export function valuesIn(bytes: Uint8Array): Map<string, string> {
  need('qpdf')
  const told = JSON.parse(
    execFileSync('qpdf', ['--json', '--json-key=acroform', onDisk(bytes)], { encoding: 'utf8', maxBuffer: 1e8 }),
  ) as Told
  return new Map(
    told.acroform.fields.map(({ fullname, value }) => [
      fullname,
      (Array.isArray(value) ? value : [value])
        .map((one) => String(one ?? '').replace(/^[ub]:/, ''))
        .filter(Boolean)
        .join('\n'),
    ]),
  )
}

/** The words that poppler finds drawn, laid out as on the page. */
export function wordsIn(bytes: Uint8Array): string {
  need('pdftotext')
  return execFileSync('pdftotext', ['-layout', onDisk(bytes), '-'], { encoding: 'utf8' })
}

/** Draws the first page; gives the path of the picture. */
export function pictureOf(bytes: Uint8Array): string {
  need('pdftoppm')
  const path = onDisk(bytes)
  execFileSync('pdftoppm', ['-r', '70', '-png', '-singlefile', path, path.replace(/\.pdf$/, '')])
  return path.replace(/\.pdf$/, '.png')
}
