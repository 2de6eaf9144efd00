import { useEffect, useState } from 'preact/hooks'
import { listMaps, saveMap } from '../../book/maps.ts'
import { addressOf, pdfForms, serves } from '../../form/map/address.ts'
import type { FormMap } from '../../form/schema.ts'
import type { Opened } from '../../pdf/open.ts'
import { say } from '../../words/say.ts'
import { wording } from '../parts/wording.ts'
import { Tools } from './tools.tsx'

/** This share of a map's controls must be on the form before the form is taken for an edition of the same. */
const enough = 0.6

const plain = (text: string): string =>
  text
    .toLocaleLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()

/** How many of a map's controls a form has, of all of them. */
export function likeness({ bindings }: Pick<FormMap, 'bindings'>, { called }: Pick<Opened, 'called'>): number {
  const names = new Set([...called.values()].map(({ name }) => plain(name)))
  const bound = bindings.filter(({ control }) => names.has(plain(control.name)))
  return bindings.length === 0 ? 0 : bound.length / bindings.length
}

/** Offers the map of an earlier edition, where none is for this one: a form with other fields or another heading. */
export function Editions({ opened }: { opened: Opened }) {
  const [near, setNear] = useState<FormMap>()
  const [trouble, setTrouble] = useState('')
  const href = `${pdfForms}/${opened.id}`

  useEffect(() => {
    let current = true
    const look = async () => {
      const maps = (await listMaps()).filter(({ address }) => address.origin === pdfForms)
      if (!current || maps.some((map) => serves(map, href))) return
      const [best] = maps
        .map((map) => ({ map, like: likeness(map, opened) }))
        .filter(({ like }) => like >= enough)
        .toSorted((a, b) => b.like - a.like)
      setNear(best?.map)
    }
    // It is a help only: mapping the form anew stays open.
    look().catch(() => {})
    return () => {
      current = false
    }
  }, [opened, href])

  if (!near) return null
  const take = async () => {
    try {
      await saveMap({ ...near, further: [...(near.further ?? []), addressOf(href)] })
      setNear(undefined)
    } catch (error) {
      setTrouble(wording(error))
    }
  }
  return (
    <Tools name="note">
      <p>{say`This looks like another edition of the form that “${near.name}” was made for.`}</p>
      {trouble && <p role="alert">{trouble}</p>}
      <button type="button" class="b low" onClick={() => void take()}>
        {say`Use that form map here too`}
      </button>
    </Tools>
  )
}
