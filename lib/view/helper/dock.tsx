import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { Icon } from '../icons.tsx'
import { useShell } from './shell.ts'
import { say } from '../../words/say.ts'

interface DockProps {
  title: string
  /** Stands beside the title. */
  aside?: string
  wide?: boolean
  closeLabel: string
  /** Share done, 0 to 1. */
  progress?: number
  onClose: () => void
  onEscape?: () => void
  footer: ComponentChildren
  children: ComponentChildren
}

/** The panel at the side of the page; on a narrow page a sheet at its foot. */
export function Dock({ title, aside, wide, closeLabel, progress, onClose, onEscape, footer, children }: DockProps) {
  const { side, setSide, folded, setFolded, trouble } = useShell()
  const panel = useRef<HTMLDivElement>(null)
  useEffect(() => panel.current?.focus({ preventScroll: true }), [title])
  const other = side === 'right' ? 'left' : 'right'

  return (
    <div
      ref={panel}
      class={`root dock ${side} ${wide ? 'wide' : ''} ${folded ? 'folded' : ''}`}
      role="dialog"
      aria-label={say`Gapsum: ${title}`}
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        onEscape?.()
      }}
    >
      <header>
        <Icon name="mark" />
        <h1>{title}</h1>
        {aside && <span class="q aside">{aside}</span>}
        <button
          type="button"
          class="ib move"
          aria-label={other === 'left' ? say`Move to the left` : say`Move to the right`}
          onClick={() => setSide(other)}
        >
          <Icon name="ready" class={side === 'right' ? 'i turned' : 'i'} />
        </button>
        <button
          type="button"
          class="ib"
          aria-label={folded ? say`Unfold` : say`Fold to see the page`}
          aria-expanded={!folded}
          onClick={() => setFolded(!folded)}
        >
          <Icon name="tw" class={folded ? 'tw up' : 'tw down'} />
        </button>
        <button type="button" class="ib" aria-label={closeLabel} onClick={onClose}>
          <Icon name="x" />
        </button>
      </header>
      {progress !== undefined && (
        <div class="prog" aria-hidden="true">
          <i style={{ width: `${Math.round(progress * 100)}%` }} />
        </div>
      )}
      <div class="bd" hidden={folded}>
        {trouble && (
          <p class="note bad" role="alert">
            {trouble}
          </p>
        )}
        {children}
      </div>
      <footer hidden={folded}>{footer}</footer>
    </div>
  )
}
