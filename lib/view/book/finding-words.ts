import type { Verified } from '../../book/verify.ts'
import { say } from '../../words/say.ts'

/** So many of a kind are told one by one. */
export const few = 5

const listed = (numbers: readonly number[]): string =>
  numbers.length > 20 ? say`${numbers.slice(0, 20).join(', ')} and ${numbers.length - 20} more` : numbers.join(', ')

/** What a check of the book found beside the chain, a sentence each. */
export function findingWords({ rows, words, files }: Pick<Verified, 'rows' | 'words' | 'files'>): string[] {
  const said: string[] = []
  if (rows.length > 0)
    said.push(
      say`The list did not show these entries as they were written: ${listed(rows)}. Their lines were made again from the entries.`,
    )
  if (words.length > 0)
    said.push(say`The search did not find these entries by all their words: ${listed(words)}. It finds them again.`)
  for (const { entry, name, fault } of files.slice(0, few))
    said.push(
      fault === 'missing'
        ? say`Entry ${entry}: ${name} is not in this book, only its fingerprint. Look for it in an earlier backup.`
        : say`Entry ${entry}: ${name} is not what was attached: its fingerprint is another. Take it from an earlier backup.`,
    )
  if (files.length > few) said.push(say`${files.length - few} more attached files are missing or changed.`)
  return said
}
