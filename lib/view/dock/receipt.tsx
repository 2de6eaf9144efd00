import { useState } from 'preact/hooks'
import type { ReceiptSeen } from '../../messages/dock-messages.ts'
import { CopyList } from './copy-list.tsx'
import { Dock } from './dock.tsx'
import { LookFirst } from './look-first.tsx'
import { ReceiptTable } from './receipt-table.tsx'
import { send } from '../helper/send.ts'
import { useShell } from './shell.ts'
import { Counts } from './status.tsx'
import { say } from '../../words/say.ts'

/** What became of a fill: first what needs a hand, then every line. */
export function Receipt({ receipt }: { receipt: ReceiptSeen }) {
  const { tell, close } = useShell()
  const { lines, kind, entry, steps, further } = receipt
  const [copying, setCopying] = useState(false)
  const [problem, setProblem] = useState('')
  const open = lines.filter(({ outcome }) => outcome !== 'entered').length
  const changed = lines.some(({ before, readBack }) => before !== readBack)
  const back = kind === 'undo'
  const [done, all] = [lines.length - open, lines.length]
  const lead =
    open === 0 && !receipt.problem
      ? all === 1
        ? back
          ? say`1 control put back and read back. Nothing was submitted: check the page, then send it yourself.`
          : say`1 control entered and read back. Nothing was submitted: check the page, then send it yourself.`
        : back
          ? say`All ${all} controls put back and read back. Nothing was submitted: check the page, then send it yourself.`
          : say`All ${all} controls entered and read back. Nothing was submitted: check the page, then send it yourself.`
      : back
        ? open === 1
          ? say`${done} of ${all} controls put back; 1 needs a look. Nothing was submitted.`
          : say`${done} of ${all} controls put back; ${open} need a look. Nothing was submitted.`
        : open === 1
          ? say`${done} of ${all} controls entered; 1 needs a look. Nothing was submitted.`
          : say`${done} of ${all} controls entered; ${open} need a look. Nothing was submitted.`

  return (
    <Dock
      wide
      title={back ? say`Put back` : say`Receipt`}
      {...(entry !== undefined && { aside: say`entry ${entry}` })}
      closeLabel={say`Close`}
      onClose={close}
      onEscape={close}
      footer={
        <>
          {further && (
            <button type="button" class="b first" onClick={() => tell({ type: 'step' })}>
              {say`Go on: step ${further.at} of ${further.of}`}
            </button>
          )}
          <button
            type="button"
            class={further ? 'b' : 'b first'}
            onClick={async () => {
              const sent = await send({
                type: 'open-book',
                ...(entry !== undefined && { entry: entry }),
              })
              if (!sent.ok) setProblem(sent.message)
            }}
          >
            {say`Open book`}
          </button>
          {receipt.lacks && (
            <button type="button" class="b" onClick={() => tell({ type: 'note' })}>
              {say`Note it in the book now`}
            </button>
          )}
          {!back && changed && (
            <button type="button" class="b" onClick={() => tell({ type: 'undo' })}>
              {say`Put back what was there`}
            </button>
          )}
          <button type="button" class="b" aria-pressed={copying} onClick={() => setCopying(!copying)}>
            {copying ? say`Table` : say`Copy list`}
          </button>
          {(back || open > 0 || receipt.problem) && (
            <button type="button" class="b" onClick={() => tell({ type: 'again' })}>
              {say`Plan again`}
            </button>
          )}
          <button type="button" class="b" onClick={close}>
            {say`Close`}
          </button>
        </>
      }
    >
      {receipt.problem && (
        <p class="note bad" role="alert">
          {receipt.problem}
        </p>
      )}
      {steps && !back && (
        <p class="q small">
          {say`Step ${steps.at} of ${steps.of}. Go to the next step on the page; the helper waits here.`}
        </p>
      )}
      {(problem || receipt.unheard) && (
        <p class="note bad" role="alert">
          {problem || receipt.unheard}
        </p>
      )}
      <p class="small lead" role="status">
        {lead}
      </p>
      <Counts of={lines.map(({ outcome }) => outcome)} />
      {copying ? (
        <CopyList lines={lines.map(({ intended, ...line }) => ({ ...line, text: intended }))} />
      ) : (
        <>
          <LookFirst lines={lines} undo={back} />
          <ReceiptTable lines={lines} placed={receipt.placed} />
        </>
      )}
    </Dock>
  )
}
