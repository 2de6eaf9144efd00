import { afterEach, expect, test, vi } from 'vitest'
import './fresh.ts'
import { formMapSchema, type FormMap } from '../../lib/form/schema.ts'
import type { KeptLimit } from '../../lib/job/schema.ts'

const map: FormMap = {
  id: 'lc-7',
  name: 'Form LC-7, part C',
  version: 3,
  created: '2026-01-05T08:00:00.000Z',
  updated: '2026-02-05T08:00:00.000Z',
  address: { origin: 'https://forms.larch.example', path: '/apply/*/part-c' },
  bindings: [
    {
      id: 'b1',
      control: {
        kind: 'text',
        name: 'Street address',
        section: 'A',
        attributes: { name: 'street' },
        placeholder: '',
        options: [],
        position: 0,
      },
      source: { from: 'item', item: 'job.street', write: {} },
    },
  ],
}
const limit: KeptLimit = {
  id: 'amendment',
  name: 'Larch County amendment',
  figure: 'air-changes-50',
  value: '2.5',
  unit: '1/h',
  origin: 'Ordinance 12, 2026',
}
const units = { flow: 'm3/h', temperature: 'degC', length: 'm' }

/** The modules anew, in a browser whose administrator set this. */
async function under(policy: unknown) {
  const changed: (() => void)[] = []
  let now = policy
  const managed = {
    get: () => (now instanceof Error ? Promise.reject(now) : Promise.resolve(now)),
    onChanged: { addListener: (listener: () => void) => changed.push(listener) },
  }
  vi.stubGlobal('browser', { storage: { managed } })
  vi.resetModules()
  const { closeDatabase } = await import('../../lib/book/database.ts')
  const [maps, limits, settings, { office }] = await Promise.all([
    import('../../lib/book/maps.ts'),
    import('../../lib/book/limits.ts'),
    import('../../lib/book/settings.ts'),
    import('../../lib/book/office.ts'),
  ])
  const set = (next: unknown) => {
    now = next
    for (const listener of changed) listener()
  }
  cleanups.push(closeDatabase)
  return { ...maps, ...limits, ...settings, office, set }
}
const cleanups: (() => unknown)[] = []

afterEach(async () => {
  for (const clean of cleanups.splice(0)) await clean()
  vi.unstubAllGlobals()
})

test('form maps, limits and settings of the office stand beside the person’s own and cannot be taken away', async () => {
  const book = await under({ maps: [map], limits: [limit], units, company: 'Bellwether Lane Testing' })
  await book.saveMap({ ...map, name: 'Another' })
  await book.saveSettings({ theme: 'dark' })

  expect((await book.listMaps()).map(({ id, name }) => [id, name])).toEqual([
    ['lc-7', 'Another'],
    ['office:lc-7', 'Form LC-7, part C'],
  ])
  expect(await book.listLimits()).toEqual([{ ...limit, id: 'office:amendment' }])
  const settings = await book.getSettings()
  expect(settings.units).toEqual(units)
  expect(settings.theme).toBe('dark')
  expect(settings.tester.company).toBe('Bellwether Lane Testing')
  expect((await book.office()).problems).toEqual([])

  await expect(book.deleteMap('office:lc-7')).rejects.toThrow(/comes from your office and stays/)
  expect(await book.listMaps()).toHaveLength(2)
})

test('what is changed of an office’s form map is the person’s own copy, one and the same each time', async () => {
  const book = await under({ maps: [map], limits: [limit] })
  const [given] = await book.listMaps()
  await book.saveMap({ ...given!, name: 'Mine' })
  const twice = await book.saveMap({ ...given!, name: 'Mine, changed' })
  expect(twice).toMatchObject({ id: 'own:lc-7', version: 2 })
  expect((await book.listMaps()).map(({ name }) => name)).toEqual(['Form LC-7, part C', 'Mine, changed'])
  const [amendment] = await book.listLimits()
  await book.saveLimit({ ...amendment!, value: '2' })
  expect((await book.listLimits()).map(({ id, value }) => [id, value])).toEqual(
    expect.arrayContaining([
      ['own:amendment', '2'],
      ['office:amendment', '2.5'],
    ]),
  )
})

test('what does not fit is left out and named, and the rest holds', async () => {
  const broken = { ...map, id: 'broken', bindings: [{ ...map.bindings[0], source: { from: 'page', text: 'x' } }] }
  const book = await under({
    maps: [broken, map, map],
    limits: 'none',
    units: { flow: 'furlongs' },
    company: 7,
    welcome: 'hello',
  })
  expect((await book.listMaps()).map(({ id }) => id)).toEqual(['office:lc-7'])
  expect((await book.getSettings()).units.flow).toBe('cfm')
  const { problems } = await book.office()
  expect(problems).toHaveLength(6)
  for (const problem of problems)
    expect(problem).toMatch(/was left out \(.+\)\. Tell whoever looks after this browser\.$/)
  expect(problems[0]).toMatch(/^Form map 1 of your office’s policy was left out \(bindings\.0\.source/)
  expect(problems.join('\n')).toMatch(/^The setting welcome/m)
})

test('a browser without a policy, and one that refuses to say, change nothing', async () => {
  for (const policy of [{}, undefined, new Error('Managed storage manifest not found')]) {
    const book = await under(policy)
    expect(await book.listMaps()).toEqual([])
    expect((await book.office()).problems).toEqual([])
  }
})

test('a policy that changes is read again', async () => {
  const book = await under({ maps: [map] })
  expect(await book.listMaps()).toHaveLength(1)
  book.set({})
  expect(await book.listMaps()).toEqual([])
})

/** Every name that a schema knows at any depth. */
function names(schema: unknown, found = new Set<string>()): Set<string> {
  if (typeof schema !== 'object' || schema === null) return found
  const { properties } = schema as { properties?: object }
  for (const name of Object.keys(properties ?? {})) found.add(name)
  for (const one of Object.values(schema)) names(one, found)
  return found
}

test('the shape for administrators has one type at each place and every name that a form map may have', async () => {
  const { officeSchema } = await import('../../lib/book/office-schema.ts')
  const shape = officeSchema()
  // https://www.chromium.org/administrators/configuring-policy-for-extensions/
  const text = JSON.stringify(shape)
  for (const word of ['anyOf', 'oneOf', 'const', '$ref', 'required', 'propertyNames'])
    expect(text).not.toContain(`"${word}"`)
  const untyped = [...text.matchAll(/\{"(?!type|\$schema)(?:items|enum|properties)"/g)].map(([found]) => found)
  expect(untyped).toEqual([])
  const z = await import('zod/mini')
  const wanted = names(z.toJSONSchema(formMapSchema))
  expect(wanted.size).toBeGreaterThan(30)
  const there = names(shape)
  expect([...wanted].filter((name) => !there.has(name))).toEqual([])
})
