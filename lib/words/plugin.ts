/** Vite plugins that put into a build what its texts become. */
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'
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

/** The text as a string, without a call. */
export const asString: Write = ({ parts }, values) => {
  if (values.length === 0) return JSON.stringify(parts[0])
  const [first = '', ...rest] = parts.map((part) => part.replaceAll(/[\\`]|\$\{/g, '\\$&'))
  return `\`${first}${rest.map((part, at) => `\${${values[at]}}${part}`).join('')}\``
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
