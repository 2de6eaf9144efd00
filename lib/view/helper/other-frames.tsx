import { useLayoutEffect, useState } from 'preact/hooks'
import { farOrigins, onFrames } from '../../form/far.ts'
import { hiddenBecause } from '../../form/visible.ts'
import { send } from './send.ts'
import { say } from '../../words/say.ts'

/** Origins of the frames on this page that neither the page nor a copy of the helper lets one look into. */
function closedOrigins(): string[] {
  const open = farOrigins()
  const found = new Set<string>()
  for (const frame of document.querySelectorAll('iframe')) {
    if (frame.contentDocument || hiddenBecause(frame)) continue
    const { origin, protocol } = new URL(frame.src || 'about:blank', location.href)
    if (protocol.startsWith('http') && !open.has(origin)) found.add(origin)
  }
  return [...found]
}

/** Says which frames of the page cannot be seen, and offers to ask for them, one origin at a time. */
export function OtherFrames() {
  const [origins, setOrigins] = useState(closedOrigins)
  const [trouble, setTrouble] = useState('')
  useLayoutEffect(() => {
    const life = new AbortController()
    onFrames(() => setOrigins(closedOrigins()), life.signal)
    return () => life.abort()
  }, [])
  return (
    <>
      {origins.map((origin) => (
        <p class="note" key={origin}>
          {say`Part of this page is a frame of ${origin}, which Gapsum cannot see.`}{' '}
          <button
            type="button"
            class="b low"
            onClick={async () => {
              const sent = await send({ type: 'ask-frame', origin })
              setTrouble(sent.ok ? '' : sent.message)
            }}
          >
            {say`Ask to see it`}
          </button>
        </p>
      ))}
      {trouble && (
        <p class="note bad" role="alert">
          {trouble}
        </p>
      )}
    </>
  )
}
