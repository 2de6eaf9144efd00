import { useState } from 'preact/hooks'
import { Icon } from '../parts/icons.tsx'
import { CopyButton } from './copy-button.tsx'
import { IntervalBar } from './interval-bar.tsx'
import type { FigureLine } from '../../results/shown.ts'
import { Working } from './working.tsx'

/** A name that is too long for its column goes on in the next line after a stroke, never inside a number. */
const breakable = (name: string) => name.split(/(?<=\/)/).map((part, at) => [at > 0 && <wbr />, part])

/** A row of the figures table with its working, which opens in place. `stop`: whether the Tab key stops in it. */
export function FigureRow({ line, stop }: { line: FigureLine; stop?: boolean }) {
  const [open, setOpen] = useState(false)
  const [copied, setCopied] = useState('')
  const full = line.detail ? `${line.name} ${line.detail}` : line.name
  const working = `working-${line.id}`
  const opens = line.steps.length > 0 || line.note !== ''
  const name = (
    <span>
      {/^\p{L}$/u.test(line.name) ? <i class="v">{line.name}</i> : breakable(line.name)}{' '}
      {line.detail && <small>{line.detail}</small>}
    </span>
  )
  return (
    <>
      <tr class="fg-row" data-figure={line.id}>
        <th scope="row" class="nm">
          {opens ? (
            <button
              type="button"
              tabIndex={stop === false ? -1 : 0}
              aria-expanded={open}
              aria-controls={open ? working : undefined}
              onClick={() => setOpen(!open)}
            >
              <Icon name="tw" class={open ? 'tw down' : 'tw'} />
              {name}
            </button>
          ) : (
            name
          )}
        </th>
        <td class="num val">{line.value}</td>
        <td class={line.margin.startsWith('−') ? 'num pm two' : 'num pm'} title={line.interval}>
          {line.margin}
        </td>
        <td class="un">{line.unit}</td>
        <td class="iv-c">
          <span role="status" class={copied ? 'ask' : 'vh'}>
            {copied}
          </span>
          {!copied && line.span && <IntervalBar {...line.span} label={line.interval} />}
        </td>
        <td class="cpy">
          <CopyButton text={line.value} of={full} stop={stop !== false} onCopied={setCopied} />
        </td>
      </tr>
      {open && (
        <tr class="wr" id={working}>
          <td colSpan={6}>
            <Working of={full} steps={line.steps} budget={line.budget ?? []} note={line.note} />
          </td>
        </tr>
      )}
    </>
  )
}
