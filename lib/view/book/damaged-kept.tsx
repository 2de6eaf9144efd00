import { damagedFills, damagedIn, type DamagedStore } from '../../book/damaged.ts'
import { say } from '../../words/say.ts'
import { useLive } from '../parts/use-live.ts'

/** Names what is kept of a kind and cannot be used. */
export function DamagedKept({ store }: { store: DamagedStore }) {
  const damaged = useLive(() => damagedIn(store), [store])
  return (
    <>
      {damaged.value?.map(({ id, name, path }) => (
        <p key={id} class="note bad" role="alert">
          {say`${name} is damaged (${path}). It is kept but not used; everything else is. Take it in again from a file that you exported before.`}
        </p>
      ))}
    </>
  )
}

/** Names what was noted of fills, is in no entry and cannot be used. */
export function DamagedFills() {
  const damaged = useLive(damagedFills, ['fills', 'entries'])
  return (
    <>
      {damaged.value?.map(({ of, id, name, path }) => (
        <p key={id} class="note bad" role="alert">
          {of === 'fill'
            ? say`A fill under way, ${name}, is damaged (${path}). It is kept but becomes no entry: look at the form, and fill it again.`
            : say`What a fill noted of ${name} is damaged (${path}). It is kept but stands in no entry: look at that control in the form.`}
        </p>
      ))}
    </>
  )
}
