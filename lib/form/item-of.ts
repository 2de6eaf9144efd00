/** Items of the material by a name that comes from a form map, which may be any text. */
import type { Item, Material } from './material.ts'

/** The item of that name; none of the names that every object answers to (`constructor`) is one. */
export function itemOf({ items }: Material, id: string): Item | undefined {
  return Object.hasOwn(items, id) ? items[id] : undefined
}

/** Whether the job does not have it yet. */
export function isEmpty(item: Item): boolean {
  if (item.kind === 'quantity') return item.empty === true || !Number.isFinite(item.value)
  if (item.kind === 'text') return item.text.trim() === ''
  return (item.kind === 'date' ? item.iso : item.value) === ''
}
