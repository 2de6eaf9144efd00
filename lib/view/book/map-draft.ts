/** Changes of a form map that are not kept as a version yet; they survive closing the page. */
import { pdfForms } from '../../form/map/address.ts'
import { formMapSchema, type FormMap } from '../../form/schema.ts'
import { say } from '../../words/say.ts'

const keyOf = (id: string) => `gapsum-map-draft-${id}`

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

/** The draft made from this version; one made from another version is out of date. */
export function readDraft(map: FormMap, store: Store = localStorage): FormMap | undefined {
  try {
    const draft = formMapSchema.safeParse(JSON.parse(store.getItem(keyOf(map.id)) ?? 'null'))
    return draft.success && draft.data.version === map.version ? draft.data : undefined
  } catch {
    return undefined
  }
}

export function writeDraft(draft: FormMap, store: Store = localStorage): void {
  store.setItem(keyOf(draft.id), JSON.stringify(draft))
}

export function dropDraft(id: string, store: Store = localStorage): void {
  store.removeItem(keyOf(id))
}

/** Why a form map with these changes cannot be kept; empty when it can. */
export function whatIsMissing({ name, address, bindings }: FormMap): string {
  if (!name.trim()) return say`Give the form map a name.`
  if (address.origin === pdfForms) {
    if (!/^\/[\da-f]{16}$/.test(address.path))
      return say`The path of a PDF form is / and the 16 characters that its page shows.`
  } else if (!/^https?:\/\/[^/?#\s]+$/.test(address.origin)) {
    return say`The site is a scheme and a host, for example https://permits.marrowby.example, without a path.`
  }
  if (!/^\/[^?#\s]*$/.test(address.path)) return say`The path begins with / and has no ? or #.`
  if (/\*\*./.test(address.path)) return say`Two stars ** stand only at the end of the path.`
  const unbound = bindings.find(
    ({ source }) =>
      (source.from === 'item' && !source.item) ||
      (source.from === 'words' && source.parts.some((part) => 'item' in part && !part.item)),
  )
  return unbound ? say`Choose a figure or field for “${unbound.control.name}”, or remove its binding.` : ''
}
