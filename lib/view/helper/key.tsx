const looks = [
  ['bound', 'bound'],
  ['now', 'being bound'],
  ['free', 'not bound'],
  ['left', 'left to you'],
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
