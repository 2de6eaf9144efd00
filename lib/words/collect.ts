/** Writes the message files in public/_locales from the texts of the sources, and says which translations are missing. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { keptWords } from './kept.ts'
import { termKeyOf } from './key.ts'
import { manifestWords } from './manifest.ts'
import { textsOf } from './texts.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const folder = join(root, 'public/_locales')

export type Messages = Record<string, { message: string; description?: string }>

const code = /(?<!\.d)\.tsx?$/

function sources(): string[] {
  return ['entrypoints', 'lib']
    .flatMap((top) =>
      readdirSync(join(root, top), { recursive: true, encoding: 'utf8' }).map((name) =>
        join(top, name).replaceAll('\\', '/'),
      ),
    )
    .filter((path) => code.test(path) && !/^lib\/words\/(?!names)/.test(path))
    .toSorted()
}

/**
 * Every text of the sources under its key.
 *
 * @throws RangeError when two texts have one key
 */
export function english(): Messages {
  const messages: Messages = {}
  const add = (key: string, message: string, description: string) => {
    const before = messages[key]
    if (before && before.message !== message)
      throw new RangeError(`“${before.message}” and “${message}” have one key: word one otherwise.`)
    messages[key] = before ?? { message, description }
  }
  for (const [key, message] of Object.entries(manifestWords)) add(key, message, 'manifest')
  for (const word of keptWords) add(termKeyOf(word), word, 'lib/words/kept.ts')
  for (const path of sources()) {
    for (const { key, message } of textsOf(readFileSync(join(root, path), 'utf8'), path)) add(key, message, path)
  }
  return messages
}

/** Every language with a message file, but for English. */
export const languages = (): string[] => readdirSync(folder).filter((name) => name !== 'en')

const fileOf = (language: string) => join(folder, language, 'messages.json')

export const read = (language: string): Messages => JSON.parse(readFileSync(fileOf(language), 'utf8')) as Messages

function write(language: string, messages: Messages): void {
  const path = fileOf(language)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, `${JSON.stringify(messages, null, 2)}\n`)
}

/**
 * What a translation still holds of the English texts, in their order, and what it lacks: those are shown in English
 * until somebody translates them.
 */
export function kept(all: Messages, translation: Messages): { messages: Messages; missing: [string, string][] } {
  const messages: Messages = {}
  const missing: [string, string][] = []
  for (const [key, { message }] of Object.entries(all)) {
    const found = translation[key]
    if (found) messages[key] = { message: found.message }
    else missing.push([key, message])
  }
  return { messages, missing }
}

if (import.meta.main) {
  const all = english()
  write('en', all)
  for (const language of languages()) {
    const { messages, missing } = kept(all, read(language))
    write(language, messages)
    if (missing.length > 0) {
      if (process.argv.includes('--complete')) process.exitCode = 1
      console.error(`${language}: ${missing.length} of ${Object.keys(all).length} texts are missing:`)
      for (const [key, message] of missing) console.error(`  ${key}  ${message}`)
    }
  }
}
