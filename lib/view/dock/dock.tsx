import type { ComponentChildren } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import { Icon } from '../parts/icons.tsx'
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
  const { tell, side, setSide, folded, setFolded, sheet, trouble } = useShell()
  const panel = useRef<HTMLDivElement>(null)
  useEffect(() => panel.current?.focus({ preventScroll: true }), [title])
  const room = useRef<HTMLDivElement>(null)
  const content = useRef<HTMLDivElement>(null)
  const asked = useRef('')
  // The frame around the dock has no size of its own: it is given the one that the content takes, at most the window's.
  useLayoutEffect(() => {
    const measure = () => {
      const [dock, scrolled] = [panel.current, room.current]
      if (!dock || !scrolled) return
      const height = Math.ceil(dock.offsetHeight + scrolled.scrollHeight - scrolled.clientHeight)
      const now = `${height} ${wide} ${side}`
      if (now !== asked.current) tell({ type: 'place', height, wide: wide === true, side })
      asked.current = now
    }
    measure()
    const watch = new ResizeObserver(measure)
    for (const { current } of [panel, room, content]) if (current) watch.observe(current)
    return () => watch.disconnect()
  })
  const other = side === 'right' ? 'left' : 'right'

  return (
    <div
      ref={panel}
      class={`root dock ${sheet ? 'sheet' : ''} ${folded ? 'folded' : ''}`}
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
      <div ref={room} class="bd" hidden={folded}>
        <div ref={content}>
          {trouble && (
            <p class="note bad" role="alert">
              {trouble}
            </p>
          )}
          {children}
        </div>
      </div>
      <footer hidden={folded}>{footer}</footer>
    </div>
  )
}
