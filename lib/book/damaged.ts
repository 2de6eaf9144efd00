/** What is kept and cannot be used, by name. */
import type * as z from 'zod/mini'
import { deviceSchema, jobSchema } from '../job/schema.ts'
import { database } from './database.ts'
import { keptLimitSchema } from './entry-schema.ts'
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
