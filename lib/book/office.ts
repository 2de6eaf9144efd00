/**
 * What an office set for all its browsers through their managed storage: form maps, limits, a few settings. It is read
 * anew at each start, stands beside what the person made, and cannot be changed here.
 */
import * as z from 'zod/mini'
import { browser } from '../browser.ts'
import { formMapSchema, type FormMap } from '../form/schema.ts'
import { keptLimitSchema, typedUnitsSchema, type KeptLimit } from '../job/schema.ts'
import { announce } from './notice.ts'
import { themes, type Settings } from './schema.ts'
import { say, shown } from '../words/say.ts'

/** The whole of a policy; every part may be left out. */
export const policySchema = z.object({
  maps: z.array(formMapSchema),
  limits: z.array(keptLimitSchema),
  /** Units of a new job. */
  units: typedUnitsSchema,
  theme: z.enum(themes),
  /** The tester's company in a new job. */
  company: z.string().check(z.maxLength(10_000)),
})

export interface Office {
  maps: FormMap[]
  limits: KeptLimit[]
  set: { units?: Settings['units']; theme?: Settings['theme']; company?: string }
  /** What in the policy could not be read, and what to do: one sentence each. */
  problems: string[]
}

const prefix = 'office:'

/** Whether an id names something that came from the office. */
export const fromOffice = (id: string): boolean => id.startsWith(prefix)

/** The id of the person's own copy of something from the office; one and the same for each copy. */
export const ownId = (id: string): string => (fromOffice(id) ? `own:${id.slice(prefix.length)}` : id)

/**
 * Reads a policy as the browser hands it over. A part that does not fit is left out and named; the rest holds.
 *
 * @param policy anything: the browser vouches for who wrote it, not for what it says
 */
export function readOffice(policy: unknown): Office {
  const found: Office = { maps: [], limits: [], set: {}, problems: [] }
  if (policy === undefined || policy === null) return found
  if (typeof policy !== 'object') {
    found.problems.push(leftOut(say`The policy`, '', say`it is no list of settings`))
    return found
  }
  const given = policy as Record<string, unknown>
  found.maps = list(given['maps'], formMapSchema, 'form map', found.problems)
  found.limits = list(given['limits'], keptLimitSchema, 'limit', found.problems)
  for (const name of ['units', 'theme', 'company'] as const) {
    if (given[name] === undefined) continue
    const read = policySchema.shape[name].safeParse(given[name])
    if (read.success) Object.assign(found.set, { [name]: read.data })
    else found.problems.push(leftOut(say`The setting ${name}`, path(read.error), read.error.issues[0]?.message ?? ''))
  }
  for (const name of Object.keys(given))
    if (!(name in policySchema.shape))
      found.problems.push(leftOut(say`The setting ${name}`, '', say`there is none of that name`))
  return found
}

function list<T extends { id: string }>(
  given: unknown,
  schema: z.core.$ZodType<T> & { safeParse: (value: unknown) => z.core.util.SafeParseResult<T> },
  called: string,
  problems: string[],
): T[] {
  if (given === undefined) return []
  if (!Array.isArray(given)) {
    problems.push(leftOut(say`The list, ${shown(called)}`, '', say`it is no list`))
    return []
  }
  const found = new Map<string, T>()
  for (const [index, one] of given.entries()) {
    const result = schema.safeParse(one)
    const kind = shown(called)
    const name = `${kind.charAt(0).toUpperCase()}${kind.slice(1)} ${index + 1}`
    if (!result.success) problems.push(leftOut(name, path(result.error), result.error.issues[0]?.message ?? ''))
    else if (found.has(result.data.id)) problems.push(leftOut(name, 'id', say`another one has the same`))
    else found.set(result.data.id, Object.assign(result.data, { id: prefix + result.data.id }))
  }
  return [...found.values()]
}

const path = (error: z.core.$ZodError): string => error.issues[0]?.path.join('.') ?? ''

function leftOut(what: string, where: string, why: string): string {
  const reason = `${where ? `${where}: ` : ''}${why}`.replace(/\.$/, '')
  return say`${what} of your office’s policy was left out (${reason}). Tell whoever looks after this browser.`
}

let known: Promise<Office> | undefined

/** What the office set; nothing where the browser has no policy for this extension. */
export function office(): Promise<Office> {
  known ??= ask()
  return known
}

async function ask(): Promise<Office> {
  const managed = (browser as typeof browser | undefined)?.storage?.managed
  if (!managed) return readOffice(undefined)
  managed.onChanged?.addListener(renew)
  try {
    return readOffice(await managed.get())
  } catch {
    // Firefox refuses where nobody set a policy.
    return readOffice(undefined)
  }
}

/** Reads the policy again: it has changed. */
export function renew(): void {
  known = undefined
  for (const what of ['maps', 'limits', 'settings'] as const) announce({ what })
}
