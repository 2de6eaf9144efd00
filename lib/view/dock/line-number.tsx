import { useShell } from './shell.ts'
import { say } from '../../words/say.ts'

interface LineNumberProps {
  number: number
  control: string
  /** The binding whose control is somewhere on the page. */
  placed: string | undefined
}

/** The number of a line; where its control is on the page, pressing it scrolls there. */
export function LineNumber({ number, control, placed }: LineNumberProps) {
  const { tell } = useShell()
  if (placed === undefined) return <>{number}</>
  return (
    <button
      type="button"
      class="ib"
      aria-label={say`${number}, show ${control} on the page`}
      onClick={() => tell({ type: 'bring', to: placed })}
    >
      {number}
    </button>
  )
}
