import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'

interface Props {
  title: string
  /** Whether it is open at first. */
  start: boolean
  children: ComponentChildren
}

/** A part of the set-up that most tests do without. What is closed is not rendered. */
export function Fold({ title, start, children }: Props) {
  const [open, setOpen] = useState(start)
  return (
    <details class="wide" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary class="link">{title}</summary>
      {open && children}
    </details>
  )
}
