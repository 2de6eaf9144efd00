import { useMemo, useState } from 'preact/hooks'
import type { Control } from '../../form/page/controls.ts'
import { say } from '../../words/say.ts'
import { Section } from '../calculator/section.tsx'
import { useBench, useDeskContext } from '../calculator/use-context.ts'
import { useRested } from '../calculator/use-rested.ts'
import type { VerdictProps } from '../../results/shown.ts'
import { itemRows } from '../dock/proposals.ts'
import { WordsEditor } from '../dock/words-editor.tsx'
import '../dock/words-editor.css'
import './paragraph.css'
import { paragraphMaterial, paragraphOf, usualParts, type Parts } from '../../results/paragraph.ts'

interface Props {
  verdict: VerdictProps | undefined
  onParts: (parts: Parts | undefined) => void
}

/** What the paragraph is for, in the terms of a form: a box of many lines. */
function box(): Control {
  const element = document.createElement('textarea')
  return { kind: 'textarea', element, elements: [element], name: '', section: '', position: 0 }
}

/** A paragraph with the results, to copy into a message; its wording is the person's own. */
export function ParagraphSection(props: Props) {
  return (
    <Section id="paragraph" title={say`For a message`} summary={say`the results in a paragraph`}>
      <Paragraph {...props} />
    </Section>
  )
}

function Paragraph({ verdict, onParts }: Props) {
  const { job, devices, settings } = useDeskContext()
  const { test } = useBench()
  const control = useMemo(box, [])
  const [said, setSaid] = useState('')
  const [editing, setEditing] = useState(false)
  const gather = () => paragraphMaterial(job, test, devices, verdict)
  const known = useRested(test.id, gather, [job, test, devices, verdict])
  if (!known) return null
  const parts = settings.paragraph ?? usualParts(known)
  const { pieces, plain, missing } = paragraphOf(parts, known)

  const copy = async () => {
    try {
      // What was typed a moment ago goes along.
      const now = paragraphOf(parts, gather())
      const kinds = { 'text/plain': now.plain, 'text/html': now.html }
      const blobs = Object.entries(kinds).map(([type, text]) => [type, new Blob([text], { type })])
      await navigator.clipboard.write([new ClipboardItem(Object.fromEntries(blobs))])
      setSaid(say`Copied, as plain text and with the figures in bold.`)
    } catch {
      setSaid(say`Not copied: select the paragraph and copy it by hand.`)
    }
  }

  return (
    <>
      <blockquote class="paragraph">
        {/* A piece is known by its place. */}
        {/* oxlint-disable-next-line react/no-array-index-key */}
        {pieces.map(({ text, strong }, at) => (strong ? <b key={at}>{text}</b> : text))}
      </blockquote>
      {missing.map((one) => (
        <p key={one} class="q small">
          {one}
        </p>
      ))}
      <div class="row">
        <button type="button" class="b low first" disabled={plain === ''} onClick={() => void copy()}>
          {say`Copy the paragraph`}
        </button>
        <button type="button" class="b low" aria-expanded={editing} onClick={() => setEditing(!editing)}>
          {say`Change the wording`}
        </button>
        {settings.paragraph && (
          <button type="button" class="b low bare" onClick={() => onParts(undefined)}>
            {say`Usual wording`}
          </button>
        )}
      </div>
      <p class="q small" role="status">
        {said}
      </p>
      {editing && (
        <WordsEditor parts={parts} rows={itemRows(known)} material={known} control={control} onChange={onParts} />
      )}
    </>
  )
}
