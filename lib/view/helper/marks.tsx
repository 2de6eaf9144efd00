import { useMemo } from 'preact/hooks'
import { useBoxes } from './use-boxes.ts'

export interface Mark {
  id: string
  elements: readonly Element[]
  /** bound, being bound, not bound, one of several that fit, left to the person, pointed at. */
  look: 'bound' | 'now' | 'free' | 'two' | 'left' | 'lit'
  tag: string
}

/** Below this height, in px, the tag hangs under the control and not over its words. */
const low = 32

/** Outlines over the page's controls. They lie in the helper's own layer and move nothing on the page. */
export function Marks({ marks }: { marks: readonly Mark[] }) {
  const groups = useMemo(() => marks.map((mark) => mark.elements), [marks])
  const boxes = useBoxes(groups)
  return (
    <div class="marks" aria-hidden="true">
      {marks.map((mark, index) => {
        const box = boxes[index]
        if (!box) return null
        return (
          <div
            key={`${mark.id}-${mark.look}`}
            class={`mk ${mark.look} ${box.bottom - box.top < low ? 'low' : ''}`}
            style={{
              left: `${box.left}px`,
              top: `${box.top}px`,
              width: `${box.right - box.left}px`,
              height: `${box.bottom - box.top}px`,
            }}
          >
            {mark.tag && <span class="tg">{mark.tag}</span>}
          </div>
        )
      })}
    </div>
  )
}
