import { today } from '../../job/empty.ts'

/** `gapsum-<what>-<today>.<extension>`, without what file systems refuse. */
export function fileName(what: string, extension: string, now: Date = new Date()): string {
  const safe = what
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
  return `gapsum-${safe.slice(0, 60)}-${today(now)}.${extension}`
}
