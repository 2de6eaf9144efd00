import { useState } from 'preact/hooks'
import { FigureRow } from './figure-row.tsx'
import type { FigureGroup } from '../../results/shown.ts'
import { say } from '../../words/say.ts'

/** The row to go to from the one that holds `from`, by a key; nothing for other keys. */
function rowAt(table: HTMLElement, from: Element, key: string): Element | undefined {
  const rows = [...table.querySelectorAll('.fg-row')]
  const at = rows.findIndex((row) => row.contains(from))
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[key]
  return at < 0 || to === undefined ? undefined : rows[Math.min(Math.max(to, 0), rows.length - 1)]
}

/**
 * Figures as a paper would set them, under their headings. For the Tab key the table is one row: the arrows go to the
 * others, so that what stands below is not fifty keys away.
 */
export function FigureTable({ groups }: { groups: readonly FigureGroup[] }) {
  const [wanted, setWanted] = useState('')
  const lines = groups.flatMap((group) => group.lines)
  const at = (id: string) => lines.find((line) => line.id === id)
  // At first where a limit bears on it, else on what most limits bear on.
  const current = (at(wanted) ?? lines.find(({ span }) => span) ?? at('air-changes-50') ?? lines[0])?.id
  return (
    <table
      class="t fg"
      onFocusIn={({ target }) =>
        setWanted((target as Element).closest<HTMLElement>('.fg-row')?.dataset['figure'] ?? wanted)
      }
      onKeyDown={(event) => {
        const from = event.target as Element
        const across = { ArrowRight: '.cpy button', ArrowLeft: 'button' }[event.key]
        const row = across ? from.closest('.fg-row') : rowAt(event.currentTarget, from, event.key)
        if (!row) return
        event.preventDefault()
        row.querySelector<HTMLElement>(across ?? (from.closest('.cpy') ? '.cpy button' : 'button'))?.focus()
      }}
    >
      <thead>
        <tr>
          <th scope="col">{say`Figure`}</th>
          <th scope="col" class="num">
            {say`Value`}
          </th>
          <th scope="col" class="num pm">
            ± 95 %
          </th>
          <th scope="col" class="un">
            {say`Unit`}
          </th>
          <th scope="col" class="iv-c">
            {say`Limit`}
          </th>
          <th scope="col" class="cpy">
            <span class="vh">{say`Copy`}</span>
          </th>
        </tr>
      </thead>
      {groups.map((group) => (
        <tbody key={group.title}>
          <tr class="gr">
            <th scope="rowgroup" colSpan={6}>
              {group.title}
            </th>
          </tr>
          {group.lines.map((line) => (
            <FigureRow key={line.id} line={line} stop={line.id === current} />
          ))}
        </tbody>
      ))}
    </table>
  )
}
