import { useEffect, useMemo, useState } from 'preact/hooks'
import type { ReceiptLine } from '../../form/schema.ts'
import type { Steps } from '../../form/steps.ts'
import { watchFilled } from '../../form/watch-filled.ts'
import { CopyList } from './copy-list.tsx'
import { Dock } from './dock.tsx'
import { LookFirst } from './look-first.tsx'
import { receiptMarks } from './plan-marks.ts'
import { Marks } from './marks.tsx'
import { ReceiptTable } from './receipt-table.tsx'
import { send } from './send.ts'
import { useShell } from './shell.ts'
import { Counts } from './status.tsx'
import { noteLate, type Filled } from './use-fill.ts'
import { useSurvey } from './use-survey.ts'
import { say } from '../../words/say.ts'

interface ReceiptProps {
  filled: Filled
  onUndo: (() => void) | undefined
  onAgain: () => void
  /** Goes on with the step that the page shows by now; nothing while it shows the one just filled. */
  onStep: ((at: number) => void) | undefined
  stepNow: () => Steps | undefined
}

/** What became of a fill: first what needs a hand, then every line. */
export function Receipt({ filled, onUndo, onAgain, onStep, stepNow }: ReceiptProps) {
  const { close } = useShell()
  const survey = useSurvey()
  const now = useMemo(stepNow, [survey])
  const further = onStep && now && now.at > (filled.plan.steps?.at ?? now.at) ? now : undefined
  const [copying, setCopying] = useState(false)
  const [problem, setProblem] = useState('')
  const { plan, kind, fill } = filled
  const [lines, setLines] = useState(filled.lines)
  const [lacks, setLacks] = useState(filled.unnoted)
  const note = async (of: readonly ReceiptLine[]) => {
    const sent = await noteLate(fill, of)
    setLacks(!sent.ok)
    setProblem(sent.ok ? '' : sent.message)
    if (sent.ok && of === lines) globalThis.gapsumUnnoted = []
  }
  useEffect(() => {
    const life = new AbortController()
    watchFilled(
      plan,
      filled.lines,
      (line) => {
        setLines((before) => before.map((each) => (each.binding === line.binding ? line : each)))
        void note([line])
      },
      life.signal,
    )
    return () => life.abort()
  }, [])
  const open = lines.filter(({ outcome }) => outcome !== 'entered').length
  const changed = lines.some(({ before, readBack }) => before !== readBack)
  const back = kind === 'undo'
  const [done, all] = [lines.length - open, lines.length]
  const lead =
    open === 0 && !filled.problem
      ? back
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
    <>
      <Marks marks={receiptMarks(lines, plan.targets)} />
      <Dock
        wide
        title={back ? say`Put back` : say`Receipt`}
        {...(filled.entry !== undefined && { aside: say`entry ${filled.entry}` })}
        closeLabel={say`Close`}
        onClose={close}
        onEscape={close}
        footer={
          <>
            {further && (
              <button type="button" class="b first" onClick={() => onStep?.(further.at)}>
                {say`Go on: step ${further.at} of ${further.of}`}
              </button>
            )}
            <button
              type="button"
              class={further ? 'b' : 'b first'}
              onClick={async () => {
                const sent = await send({
                  type: 'open-book',
                  ...(filled.entry !== undefined && { entry: filled.entry }),
                })
                if (!sent.ok) setProblem(sent.message)
              }}
            >
              {say`Open book`}
            </button>
            {lacks && (
              <button type="button" class="b" onClick={() => void note(lines)}>
                {say`Note it in the book now`}
              </button>
            )}
            {onUndo && changed && (
              <button type="button" class="b" onClick={onUndo}>
                {say`Put back what was there`}
              </button>
            )}
            <button type="button" class="b" aria-pressed={copying} onClick={() => setCopying(!copying)}>
              {copying ? say`Table` : say`Copy list`}
            </button>
            {(back || open > 0 || filled.problem) && (
              <button type="button" class="b" onClick={onAgain}>
                {say`Plan again`}
              </button>
            )}
            <button type="button" class="b" onClick={close}>
              {say`Close`}
            </button>
          </>
        }
      >
        {filled.problem && (
          <p class="note bad" role="alert">
            {filled.problem}
          </p>
        )}
        {plan.steps && !back && (
          <p class="q small">
            {say`Step ${plan.steps.at} of ${plan.steps.of}. Go to the next step on the page; the helper waits here.`}
          </p>
        )}
        {problem && (
          <p class="note bad" role="alert">
            {problem}
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
            <ReceiptTable lines={lines} elementsOf={(binding) => plan.targets.get(binding)?.elements} />
          </>
        )}
      </Dock>
    </>
  )
}
