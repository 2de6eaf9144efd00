import type { LeftOutImage } from '../../messages/dock-messages.ts'
import { Icon } from '../parts/icons.tsx'
import { say } from '../../words/say.ts'

const words: Record<string, string> = {
  'left to you': say`certification or signature: yours to give`,
  password: say`password: never touched`,
  payment: say`payment: never touched`,
  readonly: say`the page does not let it be changed`,
  disabled: say`switched off by the page`,
  'not supported': say`this kind cannot be filled yet; copy the text by hand`,
  hidden: say`hidden`,
}

/** Controls that are left out, and why. Hidden ones are only counted: the person cannot see them either. */
export function LeftToYou({ leftOut }: { leftOut: readonly LeftOutImage[] }) {
  const seen = leftOut.filter(({ reason }) => reason !== 'hidden')
  const hidden = leftOut.length - seen.length
  if (leftOut.length === 0) return null
  return (
    <details>
      <summary>
        <Icon name="tw" /> {say`Left to you`} <span class="q">{seen.length}</span>
      </summary>
      <ul class="left-list">
        {seen.map(({ key, name, reason, detail }) => (
          <li key={key}>
            <b>{name || say`a control without a name`}</b>: {words[reason] ?? reason}
            {detail && ` (${detail})`}
          </li>
        ))}
        {hidden > 0 && (
          <li>
            {hidden === 1 ? say`1 hidden control is never touched.` : say`${hidden} hidden controls are never touched.`}
          </li>
        )}
      </ul>
    </details>
  )
}
