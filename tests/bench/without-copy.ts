/** The same code without the second copy of the book: what that costs is measured against it in one run. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'
import { build } from 'wxt'

/** Modules that write the second copy, without a word in them. */
const without: Record<string, string> = {
  'journal/keep.ts': `
    const nothing = async () => {}
    export { nothing as journalEntries, nothing as journalFill, nothing as journalFillLine, nothing as journalBlob }
    export { nothing as writeEntries, nothing as writeHead, nothing as keptHead, nothing as openOf }
    export const headName = ''`,
  'journal/copies.ts': `
    export const copy = async () => {}
    export const [copiedTables, copyPrefix, ownStorage, copyName] = [[], '', () => undefined, () => '']`,
  'journal/compare.ts': `
    import { noteDone } from './run.ts'
    const nothing = async () => {}
    export { nothing as inStep, nothing as compareNow, nothing as compareAtStart }
    export const compareOnce = () => noteDone('compared')
    export const restore = async (db) => { await db.delete('single', 'restoring'); await noteDone('compared') }`,
}

export const noSecondCopy: Plugin = {
  name: 'no second copy',
  enforce: 'pre',
  load: (id) => Object.entries(without).find(([file]) => id.endsWith(file))?.[1],
}

/** Builds the extension for Chromium without the second copy; @returns the folder of its build */
export async function builtWithout(): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'without-copy-'))
  await build({
    root: fileURLToPath(new URL('../..', import.meta.url)),
    outDir,
    outDirTemplate: 'built',
    logger: {
      debug() {},
      log() {},
      info() {},
      warn() {},
      error: console.error,
      fatal: console.error,
      success() {},
      level: 0,
    },
    vite: () => ({ plugins: [noSecondCopy] }),
  })
  return join(outDir, 'built')
}
