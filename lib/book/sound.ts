/** What is kept is checked when it is read: what does not fit its schema stays where it is and is not used. */
import type * as z from 'zod/mini'

export type Schema<T> = { safeParse: (value: unknown) => z.core.util.SafeParseResult<T> }

/** What was read, as the schema sees it, or nothing when it is damaged. */
export const sound = <T>(schema: Schema<T>, kept: unknown): T | undefined => schema.safeParse(kept).data

/** Those of a list that are not damaged. */
export const allSound = <T>(schema: Schema<T>, kept: readonly unknown[]): T[] =>
  kept.flatMap((one) => sound(schema, one) ?? [])

/** What stands in the way of what is sound keeps its content under an id of its own. */
export const asideOf = <T extends { id: string }>(kept: T, at: string): T => ({
  ...kept,
  id: `${kept.id} damaged ${at}`,
})
