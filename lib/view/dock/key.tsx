import { say } from '../../words/say.ts'

const looks = [
  ['bound', say`bound`],
  ['now', say`being bound`],
  ['free', say`not bound`],
  ['left', say`left to you`],
] as const

/** What the outlines on the page mean. */
export function Key() {
  return (
    <div class="key">
      {looks.map(([look, words]) => (
        <span key={look}>
          <u class={look} />
          {words}
        </span>
      ))}
    </div>
  )
}
