import { proposeAddress } from '../../form/address.ts'
import type { FormMap } from '../../form/schema.ts'
import { newId } from './new-id.ts'

/** A map with nothing bound yet, named after the page and meant for pages like it. */
export function newFormMap(page: Document): FormMap {
  const now = new Date().toISOString()
  const name = page.querySelector('h1')?.textContent?.replace(/\s+/g, ' ').trim() || page.title.trim()
  return {
    id: newId(),
    name: name.slice(0, 80) || location.host,
    version: 1,
    created: now,
    updated: now,
    address: proposeAddress(location.href),
    bindings: [],
  }
}
