/** Canonical JSON against the reference library for RFC 8785, and bytes of texts against the platform's own encoder. */
import canonicalize from 'canonicalize'
import { assert, json, jsonValue, property, string } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bytesOfText } from '../../lib/book/bytes-of-text.ts'
import { canonical } from '../../lib/book/canonical.ts'
import { sha256 } from '../../lib/book/sha256.ts'
import { fileParts, openBookFile } from '../../lib/book/json.ts'
import { sealedFile } from '../../lib/book/sealed.ts'
import { applyImport, planImport } from '../../lib/book/import.ts'
import { verify } from '../../lib/book/entries.ts'
import { manyEntries } from './many.ts'
import './fresh.ts'

const either = (write: (value: unknown) => unknown, value: unknown) => {
  try {
    return write(value)
  } catch {
    return 'refused'
  }
}

describe('canonical JSON', () => {
  test('is what the reference library writes, of whatever is JSON', () => {
    assert(
      property(jsonValue(), (value) => {
        expect(canonical(value)).toBe(canonicalize(value))
      }),
    )
    assert(
      property(json(), (text) => {
        expect(canonical(JSON.parse(text))).toBe(canonicalize(JSON.parse(text)))
      }),
    )
  })

  // RFC 8785, 3.2.3: keys in the order of their UTF-16 code units.
  test.each<unknown>([
    { b: 1, a: { d: [2, { z: 1, y: 2 }], c: null } },
    { 10: 'a', 9: 'b', a: 1 },
    { '\u20AC': 1, '\r': 2, '\uFB33': 3, 1: 4, '\u{1F600}': 5, '\u0080': 6, '\u00F6': 7 },
    JSON.parse('{"__proto__": 1, "a": 2}'),
    { a: undefined, b: 1 },
    'a \ud83d half',
    { text: '\\ud83d as typed' },
    Number.NaN,
    { a: [Infinity] },
    { at: new Date(0) },
    [1e21, 1e-7, -0],
  ])('of %j is the same, or refused by both', (value) => {
    expect(either(canonical, value)).toEqual(either(canonicalize, value))
  })
})

test('bytes of a text are those of UTF-8, and one text does not reach into the hash of another', async () => {
  assert(
    property(string({ unit: 'binary' }), (text) => {
      expect([...bytesOfText(text)]).toEqual([...new TextEncoder().encode(text)])
    }),
  )
  const texts = ['', 'a', 'ü'.repeat(40_000), '€'.repeat(3), 'x'.repeat(400_000)]
  const apart = []
  for (const text of texts) apart.push(await sha256(new TextEncoder().encode(text)))
  expect(await Promise.all(texts.map(sha256))).toEqual(apart)
})

test('an entry of a file with more than an entry has is taken in as the entry alone', async () => {
  const [entries] = await Array.fromAsync(manyEntries(3))
  const head = { format: 'gapsum-book', version: 2, exported: '2026-03-01T10:00:00.000Z' }
  const items = [
    { kind: 'head', value: head },
    ...entries!.map((one) => ({ kind: 'entry', value: { ...one, more: 'x' } })),
  ]
  const source = await openBookFile(new Blob(await Array.fromAsync(sealedFile(items))))
  await applyImport(await planImport(source), source)
  expect(await verify()).toMatchObject({ ok: true, count: 3 })
  expect((await Array.fromAsync(fileParts({}, entries!))).join('')).not.toContain('more')
})
