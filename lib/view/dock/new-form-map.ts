import { proposeAddress } from '../../form/map/address.ts'
import type { FormMap } from '../../form/schema.ts'
import { newId } from '../helper/new-id.ts'

/**
 * A map with nothing bound yet, named after the page and meant for pages like it.
 * @param heading of the page, or its title
 */
export function newFormMap(href: string, heading: string): FormMap {
  const now = new Date().toISOString()
  return {
    id: newId(),
    name: heading,
    version: 1,
    created: now,
    updated: now,
    address: proposeAddress(href),
    bindings: [],
  }
}
