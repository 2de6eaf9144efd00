/** Vite plugins that put into a build what its texts become. */
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'
import { keptWords } from './kept.ts'
import { termKeyOf } from './key.ts'
import { imported, type Text, textsOf } from './texts.ts'

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url)).replaceAll('\\', '/')

/** What a text becomes; its values are code. */
type Write = (text: Text, values: string[]) => string

/** A source with each of its texts rewritten; a text may stand in a value of another. */
export function rewritten(code: string, path: string, write: Write): string {
  const texts = textsOf(code, path)
  function piece(from: number, to: number): string {
    let out = ''
    let at = from
    for (const text of texts) {
      if (text.start < at || text.end > to) continue
      const values = text.values.map(({ start, end }) => piece(start, end))
      out += code.slice(at, text.start) + write(text, values)
      at = text.end
    }
    return out + code.slice(at, to)
  }
  return piece(0, code.length)
}

/** A call that takes the text from the message file. */
export const asLookup: Write = ({ tag, key, message }, values) =>
  tag === 'term'
    ? JSON.stringify(message) // Without a mark that it has no effect, a bundle would keep every text of a module that it uses in part.
    : `/* @__PURE__ */ say(${[JSON.stringify(key), ...values].join(', ')})`

const escape = (part: string): string => part.replaceAll(/[\\`]|\$\{/g, '\\$&')

/** A text whose values stand between its parts, as code. */
function inPlace([first = '', ...rest]: readonly string[], values: readonly string[]): string {
  if (values.length === 0) return JSON.stringify(first)
  return `\`${escape(first)}${rest.map((part, at) => `\${${values[at]}}${escape(part)}`).join('')}\``
}

/** The text as a string, without a call. */
export const asString: Write = ({ parts }, values) => inPlace(parts, values)

/** Translations by key, as a message file holds them. */
export type Translations = Readonly<Record<string, { message: string }>>

/** The translation, or the English where there is none yet. */
const translationOf = (key: string, message: string, translations: Translations): string =>
  translations[key]?.message || message

/** The text as a string in another language; a term stays English, as it is kept and compared. */
export const asTranslation =
  (translations: Translations): Write =>
  (text, values) => {
    if (text.tag === 'term') return asString(text, values)
    const pieces = translationOf(text.key, text.message, translations).split(/\$(\d)/)
    const parts = pieces.filter((_, at) => at % 2 === 0)
    return inPlace(
      parts,
      pieces.flatMap((digit, at) => (at % 2 === 1 ? [values[Number(digit) - 1] ?? '""'] : [])),
    )
  }

function plugin(name: string, write: Write, load: (id: string) => string | null): Plugin {
  return {
    name,
    enforce: 'pre',
    load,
    transform(code, id) {
      const path = id.split('?')[0] ?? id
      if (!/\.tsx?$/.test(path) || path.includes('/node_modules/') || !imported.test(code)) return null
      return { code: rewritten(code, path, write), map: null }
    },
  }
}

/** Every text from the message file of the browser's language: for the extension. */
export const translated = (): Plugin =>
  plugin('translated-words', asLookup, (id) =>
    id === here('say.ts') ? `export { language, say, shown } from ${JSON.stringify(here('lookup.ts'))}` : null,
  )

/** English texts as they stand: for what runs without an extension. */
export const english = (): Plugin => plugin('english-words', asString, () => null)

/** Where the table of terms goes, once it is known which modules a bundle has. */
const table = '__TERMS__'

/** Texts as they stand in another language: for what runs without an extension. Terms come along in a table. */
export function inLanguage(language: string, translations: Translations): Plugin {
  const terms = new Set(keptWords)
  const write = asTranslation(translations)
  const collect: Write = (text, values) => {
    if (text.tag === 'term') terms.add(text.message)
    return write(text, values)
  }
  const words = [
    // Imported still, and never called: each text has become a string.
    'export const say = String.raw',
    `export const language = () => ${JSON.stringify(language)}`,
    `const terms = ${table}`,
    'export const shown = (text) => terms[text] ?? text',
  ]
  return {
    ...plugin('other-words', collect, (id) => (id === here('say.ts') ? words.join('\n') : null)),
    renderChunk(code) {
      // Sorted: modules are read side by side, and a build twice made is the same.
      const known = [...terms].toSorted().map((term) => [term, translationOf(termKeyOf(term), term, translations)])
      return { code: code.replace(table, () => JSON.stringify(Object.fromEntries(known))), map: null }
    },
  }
}
