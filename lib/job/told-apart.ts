import type { Job } from './schema.ts'
import { language, say } from '../words/say.ts'
import { jobTitle } from './job-title.ts'

/**
 * What tells jobs of one address apart in a list, by id: when each was begun. Nothing for a job whose address no other
 * job has.
 */
export function toldApart(jobs: readonly Job[]): ReadonlyMap<string, string> {
  const like = Map.groupBy(jobs, jobTitle)
  return new Map(
    [...like.values()]
      .filter((same) => same.length > 1)
      .flat()
      .map(({ id, created }): [string, string] => [
        id,
        say`begun ${new Date(created).toLocaleString(language(), { dateStyle: 'medium', timeStyle: 'medium' })}`,
      ]),
  )
}
