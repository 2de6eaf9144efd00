/** Where a form map belongs: an origin and a path, segment by segment. */
import type { Address, FormMap } from '../schema.ts'

const segments = (path: string): string[] => path.split('/').filter(Boolean)

/** Stands in place of an origin for a PDF form: its map is for the form, wherever the file lies. */
export const pdfForms = 'pdf:'

/** The page of the extension that shows a PDF form has the form's id behind its address; it is the same everywhere. */
const pdfForm = /^(?:pdf:\/|[a-z]+-extension:\/\/[^/]+\/pdf-form\.html#)([\da-f]{16})$/

/** The page's own address, without query and fragment: they may hold private tokens. Of a PDF form its id. */
export function addressOf(url: string): Address {
  const form = pdfForm.exec(url)
  if (form) return { origin: pdfForms, path: `/${form[1]}` }
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
  if (origin === pdfForms) return { origin, path }
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

/** Whether a form map is for a page: under its own address or that of a later step. */
export function serves({ address, further = [] }: Pick<FormMap, 'address' | 'further'>, url: string): boolean {
  return [address, ...further].some((one) => matches(one, url))
}

/** The map, made to serve the page too when it does not yet: a later step of the form has an address of its own. */
export function spanning<T extends Pick<FormMap, 'address' | 'further'>>(map: T, url: string): T {
  return serves(map, url) ? map : { ...map, further: [...(map.further ?? []), proposeAddress(url)] }
}
