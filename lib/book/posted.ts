/** A book file as a worker of the browser can be given it. */
import { openedAgain, type Sealed } from './backup.ts'
import type { Readable } from './lines.ts'

/** The file itself, or a backup with the key that opened it. */
export type Posted = Blob | Sealed

/** What a worker can open the same file from; nothing where it is neither. */
export function posted(file: Readable): Posted | undefined {
  return file instanceof Blob ? file : file.sealed
}

export const readable = (given: Posted): Readable => (given instanceof Blob ? given : openedAgain(given))
