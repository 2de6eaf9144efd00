import { useEffect, useState } from 'preact/hooks'
import { Icon } from '../parts/icons.tsx'
import { say } from '../../words/say.ts'

interface Props {
  /** What is copied, exactly. */
  text: string
  /** What it is, for its name: `ACH50`. */
  of: string
  /** Whether the Tab key stops here. */
  stop: boolean
  /** Told the text while it counts as just copied, and an empty string after. */
  onCopied: (text: string) => void
}

const shownFor = 3000

/** The right arrow leads to it from the figure; the Tab key in the one row of a table in which it stops. */
export function CopyButton({ text, of, stop, onCopied }: Props) {
  const [done, setDone] = useState(false)

  useEffect(() => {
    if (!done) return
    const timer = setTimeout(() => {
      setDone(false)
      onCopied('')
    }, shownFor)
    return () => clearTimeout(timer)
  }, [done])

  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text)
      setDone(true)
      onCopied(say`copied ${text}`)
    } catch {
      onCopied(say`not copied: select the value and copy it by hand`)
    }
  }

  return (
    <button
      type="button"
      class={done ? 'ib done' : 'ib'}
      tabIndex={stop ? 0 : -1}
      aria-label={say`Copy ${of}, ${text}`}
      onClick={copy}
    >
      <Icon name={done ? 'tick' : 'copy'} />
    </button>
  )
}
