import { createHash } from 'node:crypto'
import { beforeEach, describe, expect, test } from 'vitest'
import { seal, verifyChain } from '../../lib/book/chain.ts'
import { database } from '../../lib/book/database.ts'
import { entriesForwards, getEntry, verify } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import type { Entry, FillEntry } from '../../lib/book/schema.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import './fresh.ts'

beforeEach(async () => {
  for (const id of ['a', 'b', 'c', 'd']) {
    await startFill(fakeFill(id), context)
    await addFillLine(id, fakeLine('flow', { readBack: `75${id}` }))
    await endFill(id)
  }
})

/** Reaches past the store, as someone with the browser's tools could. */
async function tamper(change: (entry: FillEntry) => Entry, number: number) {
  const entry = await getEntry(number)
  await (await database()).put('entries', change(entry as FillEntry))
}

test('a book that nobody touched fits, and progress is told', async () => {
  const seen: number[] = []
  const verdict = await verify((checked) => seen.push(checked))
  expect(verdict).toMatchObject({ ok: true, count: 4, hash: (await getEntry(4))?.hash })
  expect(seen).toEqual([1, 2, 3, 4])
})

test('an empty book fits', async () => {
  expect(await verifyChain([])).toEqual({ ok: true, count: 0, first: '', last: '', hash: '' })
})

describe('the first entry that does not fit is named:', () => {
  test('a changed text', async () => {
    await tamper((entry) => ({ ...entry, lines: [{ ...entry.lines[0]!, readBack: '700' }] }), 2)
    expect(await verify()).toMatchInlineSnapshot(`
      {
        "entry": 2,
        "message": "Entry 2 is not what was written: its fingerprint does not fit its content.",
        "misfit": "changed",
        "ok": false,
      }
    `)
  })

  test('a changed time', async () => {
    await tamper((entry) => ({ ...entry, at: '2020-01-01T00:00:00.000Z' }), 3)
    expect(await verify()).toMatchObject({ ok: false, entry: 3, misfit: 'changed' })
  })

  test('a changed entry sealed anew: the next one no longer follows', async () => {
    const entry = (await getEntry(2))!
    const changed = { ...entry, at: '2020-01-01T00:00:00.000Z' }
    const hash = await seal(changed)
    await tamper(() => ({ ...changed, hash }), 2)
    expect(await verify()).toMatchInlineSnapshot(`
      {
        "entry": 3,
        "message": "Entry 3 does not follow the entry before it.",
        "misfit": "out of place",
        "ok": false,
      }
    `)
  })

  test('an added field', async () => {
    await tamper((entry) => ({ ...entry, remark: 'fine' }) as FillEntry, 1)
    expect(await verify()).toMatchObject({ ok: false, entry: 1, misfit: 'changed' })
  })

  test('a removed entry', async () => {
    await (await database()).delete('entries', 2)
    expect(await verify()).toMatchInlineSnapshot(`
      {
        "entry": 2,
        "message": "Entry 2 is missing.",
        "misfit": "missing",
        "ok": false,
      }
    `)
  })

  test('entries cut off the end', async () => {
    await (await database()).delete('entries', 4)
    await (await database()).delete('entries', 3)
    expect(await verify()).toMatchInlineSnapshot(`
      {
        "entry": 3,
        "message": "Entry 3 and what came after it are missing from the end of the book.",
        "misfit": "cut off",
        "ok": false,
      }
    `)
  })

  test('two entries that changed places', async () => {
    const [second, third] = [(await getEntry(2))!, (await getEntry(3))!]
    const db = await database()
    await db.delete('entries', 2)
    await db.delete('entries', 3)
    await db.put('entries', { ...third, number: 2 })
    await db.put('entries', { ...second, number: 3 })
    expect(await verify()).toMatchObject({ ok: false, entry: 2 })
  })

  test('two entries that changed places in a file', async () => {
    const entries: Entry[] = []
    for await (const entry of entriesForwards()) entries.push(entry)
    const [a, b, c, d] = entries as [Entry, Entry, Entry, Entry]
    expect(await verifyChain([a, c, b, d])).toMatchObject({ ok: false, entry: 2 })
    expect(await verifyChain([b, c, d])).toMatchObject({ ok: false, entry: 1, misfit: 'missing' })
  })
})

/** Members in the order of their UTF-16 code units, strings and numbers as ECMAScript writes them (RFC 8785, section 3). */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const members = Object.entries(value).filter(([, member]) => member !== undefined)
  const sorted = members.toSorted(([a], [b]) => (a < b ? -1 : 1))
  return `{${sorted.map(([name, member]) => `${JSON.stringify(name)}:${canonical(member)}`).join(',')}}`
}

test('a fingerprint can be recomputed without this program (RFC 8785 and another SHA-256)', async () => {
  const { hash, ...rest } = (await getEntry(3))!
  expect(createHash('sha256').update(canonical(rest)).digest('hex')).toBe(hash)
})

/** RFC 8785, section 3.2.2 and 3.2.3: the published sample and its canonical form. */
test('the canonical form is that of the published sample', async () => {
  const { default: canonicalize } = await import('canonicalize')
  const sample: unknown = JSON.parse(
    String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
  )
  expect(canonicalize(sample)).toBe(
    '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"\u20ac$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
  )
})
