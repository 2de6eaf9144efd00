import { useLayoutEffect, useRef } from 'preact/hooks'
import type { Control } from '../../form/page/controls.ts'
import { titleOf } from './describe.ts'
import { say } from '../../words/say.ts'

export interface ControlRow {
  key: string
  control: Control
  /** What goes into it; empty while it is not bound. */
  bound: string
  /** The binding fits more than one control of the page. */
  twin: boolean
}

interface ControlListProps {
  rows: readonly ControlRow[]
  /** The control that was asked about before: the keyboard goes on from there. */
  lately: string | undefined
  onPick: (key: string) => void
  onPoint: (key: string | undefined) => void
}

const steps: Record<string, number> = { ArrowDown: 1, n: 1, ArrowUp: -1, p: -1 }

/** All controls in the page's order; arrows or n and p go through them, Enter opens one. */
export function ControlList({ rows, lately, onPick, onPoint }: ControlListProps) {
  const list = useRef<HTMLUListElement>(null)
  useLayoutEffect(() => {
    if (lately !== undefined && !document.activeElement?.matches('button')) {
      list.current?.querySelector<HTMLElement>(`[data-key="${lately}"]`)?.focus()
    }
  }, [lately])
  return (
    <ul
      ref={list}
      class="list"
      aria-label={say`Controls of this page`}
      onKeyDown={(event) => {
        const step = steps[event.key]
        if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return
        const buttons = [...(list.current?.querySelectorAll('button') ?? [])]
        const at = buttons.findIndex((button) => button === event.target)
        event.preventDefault()
        buttons.at(Math.min(Math.max(at + step, 0), buttons.length - 1))?.focus()
      }}
    >
      {rows.map(({ key, control, bound, twin }, index) => (
        <li key={key}>
          {control.section && control.section !== rows[index - 1]?.control.section && (
            <p class="gr">{control.section}</p>
          )}
          <button
            type="button"
            class="row"
            data-key={key}
            onClick={() => onPick(key)}
            onFocus={() => onPoint(key)}
            onBlur={() => onPoint(undefined)}
            onPointerEnter={() => onPoint(key)}
            onPointerLeave={() => onPoint(undefined)}
          >
            <span class="n">{index + 1}</span>
            <span>{titleOf(control)}</span>
            <span class={`to ${bound ? '' : 'q'} ${twin ? 'doubt' : ''}`}>
              {bound || say`not bound`}
              {twin && say` (which of two?)`}
            </span>
          </button>
        </li>
      ))}
    </ul>
  )
}
