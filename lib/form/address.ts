/** Where a form map belongs: an origin and a path, segment by segment. */
import type { Address } from './schema.ts'

const segments = (path: string): string[] => path.split('/').filter(Boolean)

/** The page's own address, without query and fragment: they may hold private tokens. */
export function addressOf(url: string): Address {
  const { origin, pathname } = new URL(url)
  return { origin, path: pathname }
}

/** Whether a segment looks like the id of one record, so that the next record's page has another one. */
function isRecord(segment: string): boolean {
  if (/^\d+$/.test(segment)) return true
  if (/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f-]+$/i.test(segment)) return true
  if (/^[A-Za-z]{1,6}[-_]?(\d+[-_])*\d{3,}$/.test(segment)) return true
  return segment.length >= 8 && /\d/.test(segment) && /[A-Za-z]/.test(segment) && !/[-_.]/.test(segment)
}

/** The address with the segments that look like record ids replaced by `*`: a proposal for the person to look at. */
export function proposeAddress(url: string): Address {
  const { origin, path } = addressOf(url)
  return {
    origin,
    path: `/${segments(path)
      .map((segment) => (isRecord(segment) ? '*' : segment))
      .join('/')}`,
  }
}

/** Whether a page belongs to the address. `*` stands for one segment, a last `**` for any rest, even none. */
export function matches(address: Address, url: string): boolean {
  const page = addressOf(url)
  if (page.origin !== address.origin) return false
  const pattern = segments(address.path)
  const path = segments(page.path)
  const rest = pattern.at(-1) === '**'
  if (rest) pattern.pop()
  if (rest ? path.length < pattern.length : path.length !== pattern.length) return false
  return pattern.every((segment, at) => segment === '*' || segment === path[at])
}
