import { useEffect, useMemo } from 'preact/hooks'
import { markFrames } from '../../form/far.ts'
import type { Look } from '../../form/looks.ts'
import { send } from './send.ts'
import { markClass, markStyle } from './mark-style.ts'
import { useBoxes } from './use-boxes.ts'

export interface Mark {
  id: string
  elements: readonly Element[]
  look: Look
  tag: string
}

interface MarksProps {
  marks: readonly Mark[]
  /** Whether a click in a frame of another origin chooses the control there. */
  pick?: boolean
}

/** Outlines over the page's controls. They lie in the helper's own layer and move nothing on the page. */
export function Marks({ marks, pick }: MarksProps) {
  const groups = useMemo(() => marks.map((mark) => mark.elements), [marks])
  const boxes = useBoxes(groups)
  const tell = (now: readonly Mark[]) =>
    markFrames(now, (frame, own) => void send({ type: 'frame-marks', frame, pick: !!pick, marks: own }))
  useEffect(() => tell(marks), [marks])
  useEffect(() => () => tell([]), [])
  return (
    <div class="marks" aria-hidden="true">
      {marks.map((mark, index) => {
        const box = boxes[index]
        if (!box) return null
        return (
          <div key={`${mark.id}-${mark.look}`} class={markClass(mark.look, box)} style={markStyle(box)}>
            {mark.tag && <span class="tg">{mark.tag}</span>}
          </div>
        )
      })}
    </div>
  )
}
