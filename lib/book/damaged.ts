/** What is kept and cannot be used, by name. */
import type * as z from 'zod/mini'
import { receiptLineSchema } from '../form/schema.ts'
import { deviceSchema, jobSchema, keptLimitSchema } from '../job/schema.ts'
import { database } from './database.ts'
import { openFillSchema } from './schema.ts'
import { soundSettings } from './settings.ts'

export interface Damaged {
  id: string
  /** What the person knows it by, as far as it can still be read. */
  name: string
  /** What is wrong in it: the path to the first field. */
  path: string
}

const schemas = { jobs: jobSchema, devices: deviceSchema, limits: keptLimitSchema }
export type DamagedStore = keyof typeof schemas

/** The first field of a value that does not fit, or nothing when all fit. */
export function misfit(schema: z.ZodMiniType, kept: unknown): string | undefined {
  const read = schema.safeParse(kept)
  return read.success ? undefined : (read.error.issues[0]?.path.join('.') ?? '')
}

/** Jobs, devices or limits that are kept and cannot be used. */
export async function damagedIn(store: DamagedStore): Promise<Damaged[]> {
  const all: unknown[] = await (await database()).getAll(store)
  return all.flatMap((kept) => {
    const path = misfit(schemas[store], kept)
    return path === undefined ? [] : { id: text(kept, 'id'), name: nameOf(kept), path }
  })
}

type DamagedFill = Damaged & { of: 'fill' | 'line' }

function damagedFill(
  of: DamagedFill['of'],
  schema: z.ZodMiniType,
  kept: unknown,
  id: string,
  name: string,
): DamagedFill[] {
  const path = misfit(schema, kept)
  return path === undefined ? [] : [{ of, id, name, path }]
}

/** Fills under way, and what was noted of single controls, that are kept and are in no entry. */
export async function damagedFills(): Promise<DamagedFill[]> {
  const db = await database()
  const [fills, lines]: [unknown[], unknown[]] = [await db.getAll('fills'), await db.getAll('lines')]
  return [
    ...fills.flatMap((kept) => {
      const id = text(kept, 'id')
      return damagedFill('fill', openFillSchema, kept, id, text(field(field(kept, 'fill'), 'job'), 'name') || id)
    }),
    ...lines.flatMap((kept) => {
      const [id, line] = [`${text(kept, 'fill')} ${String(field(kept, 'index'))}`, field(kept, 'line')]
      return damagedFill('line', receiptLineSchema, line, id, text(line, 'control') || text(line, 'binding') || id)
    }),
  ]
}

/** The settings that are kept and cannot be used; the usual ones stand in their place. */
export async function damagedSettings(): Promise<string[]> {
  return soundSettings(await (await database()).get('single', 'settings')).damaged
}

const field = (kept: unknown, name: string): unknown => (kept as Record<string, unknown> | undefined)?.[name]

function text(kept: unknown, name: string): string {
  const found = field(kept, name)
  return typeof found === 'string' ? found : ''
}

const nameOf = (kept: unknown): string =>
  text(kept, 'name') || text(field(kept, 'building'), 'street') || text(kept, 'id')
