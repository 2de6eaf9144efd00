/** Files that nobody should take in: broken, of wrong shape, too deep, too long, or trying to do something. */
import { sealedFile, type Item } from '../../lib/book/sealed.ts'

export const html = '<img src=x onerror="globalThis.hacked = 1"><script>globalThis.hacked = 1</script>'

const pick = <T>(random: () => number, list: readonly T[]): T => list[Math.floor(random() * list.length)]!

const wild: readonly unknown[] = [
  null,
  true,
  -0,
  1e308,
  '',
  html,
  'x'.repeat(20_000),
  [],
  {},
  [[]],
  { toString: 1 },
  { valueOf: 'x' },
  '\u0000\uffff',
  '2026-13-45',
  Number.MAX_SAFE_INTEGER,
]

/** A value of the same JSON with one place put out of shape. */
export function warped(value: unknown, random: () => number): unknown {
  if (typeof value !== 'object' || value === null || random() < 0.15) return pick(random, wild)
  if (Array.isArray(value)) {
    if (value.length === 0) return [pick(random, wild)]
    return value.with(Math.floor(random() * value.length), warped(pick(random, value), random))
  }
  const names = Object.keys(value)
  const name = pick(
    random,
    names.length > 0 && random() < 0.8 ? names : ['__proto__', 'constructor', 'prototype', 'hasOwnProperty'],
  )
  const copy: Record<string, unknown> = Object.fromEntries(Object.entries(value))
  if (random() < 0.25) delete copy[name]
  else Object.defineProperty(copy, name, { value: warped(copy[name], random), enumerable: true, configurable: true })
  return copy
}

/** A book file with honest seals around what was put out of shape. */
export async function resealed(items: readonly Item[], random: () => number): Promise<string> {
  const at = Math.floor(random() * items.length)
  const { kind, value } = items[at]!
  let text = ''
  for await (const part of sealedFile(items.with(at, { kind, value: warped(value, random) }))) text += part
  return text
}

/** A text cut, doubled, spliced or turned at random places. */
export function mangled(text: string, random: () => number): string {
  const a = Math.floor(random() * text.length)
  const b = Math.floor(random() * text.length)
  const [from, to] = [Math.min(a, b), Math.max(a, b)]
  switch (Math.floor(random() * 6)) {
    case 0:
      return text.slice(0, from)
    case 1:
      return text.slice(0, from) + text.slice(to)
    case 2:
      return text.slice(0, to) + text.slice(from)
    case 3:
      return text.slice(0, from) + String.fromCharCode(Math.floor(random() * 0x10000)) + text.slice(from + 1)
    case 4:
      return text.slice(0, from) + html + text.slice(from)
    default:
      return text.slice(0, from) + '['.repeat(1 + Math.floor(random() * 50_000)) + text.slice(from)
  }
}

/** Files whose fault is known, with what is wrong of them. */
export function known(): [what: string, file: string][] {
  const head = '{"head":{"exported":"","format":"gapsum-book","version":2},"n":1,"seal":"0"}'
  return [
    ['nothing', ''],
    ['a page', `<!doctype html>${html}`],
    ['half a file', '[\n{"head":'],
    ['nested 200,000 deep', `[\n{"head":${'['.repeat(200_000)}${']'.repeat(200_000)},"n":1,"seal":"0"},\n]\n`],
    ['nested deep, of the first version', '{"format":"gapsum-book","jobs":'.padEnd(400_000, '[')],
    ['keys of the prototype', '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}'],
    ['keys of the prototype, as a record', '[\n{"__proto__":{"polluted":1},"n":1,"seal":"0"},\n]\n'],
    ['a later version', head.replace('"version":2', '"version":3').replace(/^/, '[\n')],
    ['a version of old that was none', '{"format":"gapsum-book","version":0,"jobs":[]}'],
    ['a number for a book', '12'],
    ['seals that are none', `[\n${head},\n]\n`],
  ]
}
