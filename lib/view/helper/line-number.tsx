import { bringIntoView } from './bring-into-view.ts'
import { say } from '../../words/say.ts'

interface LineNumberProps {
  number: number
  control: string
  elements: readonly Element[] | undefined
}

/** The number of a line; where its control is on the page, pressing it scrolls there. */
export function LineNumber({ number, control, elements }: LineNumberProps) {
  if (!elements?.[0]) return <>{number}</>
  return (
    <button
      type="button"
      class="ib"
      aria-label={say`${number}, show ${control} on the page`}
      onClick={() => bringIntoView(elements)}
    >
      {number}
    </button>
  )
}
