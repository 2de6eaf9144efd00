import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { say } from '../../words/say.ts'
import type { FigureGroup, FigureLine } from '../../results/shown.ts'
import { movePin, setDecimals, togglePin, type OwnFigure } from '../../results/own.ts'
import { Icon } from '../parts/icons.tsx'

interface Props {
  groups: readonly FigureGroup[]
  own: readonly OwnFigure[]
  onOwn: (own: OwnFigure[]) => void
  onClose: () => void
}

const places = [0, 1, 2, 3, 4, 5]

const nameOf = ({ name, detail }: FigureLine): string => (detail ? `${name} ${detail}` : name)

/** Which figures stand first, in which order, with how many decimals. */
export function Arrange({ groups, own, onOwn, onClose }: Props) {
  const list = useRef<HTMLUListElement>(null)
  const [moved, setMoved] = useState('')
  const focus = useRef('')
  const lines = groups.flatMap((group) => group.lines)
  const pinned = own.flatMap(({ id }) => lines.find((line) => line.id === id) ?? [])
  const pins = new Set(pinned.map(({ id }) => id))

  // A row that moved takes the focus along, for a key may be pressed again.
  useLayoutEffect(() => {
    if (!focus.current) return
    const row = list.current?.querySelector(`[data-figure="${CSS.escape(focus.current)}"]`)
    const [id, way] = [focus.current, row?.getAttribute('data-way') ?? '']
    focus.current = ''
    const buttons = [...(list.current?.querySelectorAll<HTMLButtonElement>(`[data-move="${CSS.escape(id)}"]`) ?? [])]
    const wanted = buttons.find((button) => button.dataset['way'] === way && !button.disabled)
    ;(wanted ?? buttons.find((button) => !button.disabled))?.focus()
  })

  const move = (line: FigureLine, by: -1 | 1, row: HTMLElement) => {
    row.dataset['way'] = String(by)
    focus.current = line.id
    const next = movePin(own, line.id, by, pins)
    onOwn(next)
    const at = next.filter(({ id }) => pins.has(id)).findIndex(({ id }) => id === line.id) + 1
    setMoved(say`${nameOf(line)} is number ${at} of ${pinned.length}.`)
  }

  return (
    <div class="panel arrange">
      <p class="q">{say`Pinned figures stand first, in this order. The copy button copies the decimals chosen here.`}</p>
      <p class="vh" role="status">
        {moved}
      </p>
      <ul ref={list}>
        {[...pinned, ...lines.filter(({ id }) => !pins.has(id))].map((line) => {
          const at = pinned.indexOf(line)
          const name = nameOf(line)
          return (
            <li
              key={line.id}
              data-figure={line.id}
              onKeyDown={(event) => {
                const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined
                if (!by || !event.altKey || at < 0) return
                event.preventDefault()
                move(line, by, event.currentTarget)
              }}
            >
              <label>
                <input type="checkbox" checked={at >= 0} onChange={() => onOwn(togglePin(own, line.id))} />
                <span>{name}</span>
              </label>
              {at >= 0 && (
                <>
                  <select
                    class="in"
                    aria-label={say`Decimals of ${name}`}
                    value={String(own.find(({ id }) => id === line.id)?.decimals ?? '')}
                    onChange={({ currentTarget: { value } }) =>
                      onOwn(setDecimals(own, line.id, value === '' ? undefined : Number(value)))
                    }
                  >
                    <option value="">{say`usual`}</option>
                    {places.map((count) => (
                      <option key={count} value={String(count)}>
                        {count === 0 ? '0' : `0.${'0'.repeat(count)}`}
                      </option>
                    ))}
                  </select>
                  {([-1, 1] as const).map((by) => (
                    <button
                      key={by}
                      type="button"
                      class="ib"
                      data-move={line.id}
                      data-way={String(by)}
                      disabled={!pinned[at + by]}
                      aria-label={by < 0 ? say`Move ${name} up` : say`Move ${name} down`}
                      onClick={(event) => move(line, by, event.currentTarget.closest('li')!)}
                    >
                      <Icon name="tw" class={by < 0 ? 'tw up' : 'tw down'} />
                    </button>
                  ))}
                </>
              )}
            </li>
          )
        })}
      </ul>
      <div class="row">
        <button type="button" class="b low" onClick={onClose}>
          {say`Done`}
        </button>
      </div>
    </div>
  )
}
