import { useState } from 'preact/hooks'
import { Icon } from '../parts/icons.tsx'
import { say } from '../../words/say.ts'

export interface CopyLine {
  binding: string
  control: string
  section: string
  text: string
}

/** Works without the Clipboard interface too, which pages without https do not have. */
async function copy(text: string, from: HTMLElement): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text)
    return true
  } catch {
    const field = document.createElement('textarea')
    field.value = text
    from.append(field)
    field.select()
    const done = document.execCommand('copy')
    field.remove()
    from.focus()
    return done
  }
}

/** The texts in the page's order, each with a button to copy it: the way that works on any page. */
export function CopyList({ lines }: { lines: readonly CopyLine[] }) {
  const [copied, setCopied] = useState<Record<string, boolean>>({})
  return (
    <div>
      <ol class="copies">
        {lines.map((line) => (
          <li key={line.binding}>
            <span>
              <small class="q">{line.section ? `${line.section}, ${line.control}` : line.control}</small>
              {line.text ? <code>{line.text}</code> : <span class="q small">{say`nothing to enter`}</span>}
            </span>
            {line.text && (
              <button
                type="button"
                class={`ib ${copied[line.binding] ? 'done' : ''}`}
                aria-label={say`Copy ${line.control}: ${line.text}`}
                onClick={async (event) => {
                  const done = await copy(line.text, event.currentTarget)
                  setCopied((before) => ({ ...before, [line.binding]: done }))
                }}
              >
                <Icon name={copied[line.binding] ? 'tick' : 'copy'} />
              </button>
            )}
          </li>
        ))}
      </ol>
      <p class="vh" role="status">
        {Object.values(copied).filter(Boolean).length > 0 ? say`Copied.` : ''}
      </p>
    </div>
  )
}
