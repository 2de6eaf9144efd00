import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import { PageIcon } from '../parts/page-icons.tsx'
import { BenchContext, ViewContext } from './context.ts'
import { say } from '../../words/say.ts'

interface Props {
  /** Its id in the page and in the kept state of the view. */
  id: string
  title: string
  /** What is inside, in a line. */
  summary?: ComponentChildren
  end?: ComponentChildren
  /** A set-up line carries no heading of its own. */
  plain?: boolean
  /** Whether the cell of a path stands inside: a finding beside it, which nobody sees while it is closed, is told here. */
  holds?: (path: string) => boolean
  children: ComponentChildren
}

/** A section that opens in place and summarises itself. What is closed is not rendered. */
export function Section({ id, title, summary, end, plain, holds, children }: Props) {
  const view = useContext(ViewContext)
  const open = view.isOpen(id)
  const found = useContext(BenchContext)?.found
  const wrong = !open && found && holds && [...found.keys()].some(holds)
  return (
    <details
      class={plain ? 'sec plain' : 'sec'}
      id={id}
      open={open}
      onToggle={(event) => {
        const now = event.currentTarget.open
        if (now !== open) view.setOpen(id, now)
      }}
    >
      <summary>
        <PageIcon name="tw" />
        {plain ? <span class="vh">{title}: </span> : <h2>{title}</h2>}
        {wrong ? (
          <span class="finding">
            <PageIcon name="doubtful" /> {say`Something inside is to be corrected: open to see it.`}
          </span>
        ) : (
          summary && <span class="q">{summary}</span>
        )}
        {end && <span class="end">{end}</span>}
      </summary>
      {open && children}
    </details>
  )
}
