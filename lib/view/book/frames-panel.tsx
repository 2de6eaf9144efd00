import { useEffect, useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import { say } from '../../words/say.ts'

const wanted = (): string => new URLSearchParams(location.hash.split('?')[1] ?? '').get('site') ?? ''

/** A pattern for the origin's host: patterns of Firefox know no ports. */
function patternOf(origin: string): string {
  const { protocol, hostname } = new URL(origin)
  return `${protocol}//${hostname}/*`
}

/** Sites whose frames Gapsum may look into: asked for one at a time, listed, and taken back here. */
export function FramesPanel() {
  const [origins, setOrigins] = useState<string[]>([])
  const [asked, setAsked] = useState(wanted)
  const [trouble, setTrouble] = useState('')

  useEffect(() => {
    const look = async () => setOrigins((await browser.permissions.getAll()).origins ?? [])
    const route = () => setAsked(wanted())
    void look()
    browser.permissions.onAdded.addListener(look)
    browser.permissions.onRemoved.addListener(look)
    addEventListener('hashchange', route)
    return () => {
      browser.permissions.onAdded.removeListener(look)
      browser.permissions.onRemoved.removeListener(look)
      removeEventListener('hashchange', route)
    }
  }, [])

  const open = asked !== '' && /^https?:\/\/[^/]+$/.test(asked) && !origins.includes(patternOf(asked))
  const allow = async () => {
    setTrouble('')
    try {
      const granted = await browser.permissions.request({ origins: [patternOf(asked)] })
      if (!granted)
        setTrouble(say`Not allowed. The form in the frame stays with you; the copy list works all the same.`)
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error))
    }
  }

  return (
    <section class="group">
      <h2>{say`Frames of other sites`}</h2>
      <p class="q">
        {say`A form may stand in a frame of another site than the page around it. Gapsum looks into such a frame only after you allowed that one site, and only while the helper is open on the page.`}
      </p>
      {open && (
        <p>
          <button type="button" class="b first" onClick={() => void allow()}>
            {say`Allow frames of ${asked}`}
          </button>
        </p>
      )}
      {trouble && (
        <p class="finding" role="alert">
          {trouble}
        </p>
      )}
      {origins.length === 0 ? (
        <p class="q">{say`No site is allowed.`}</p>
      ) : (
        <ul>
          {origins.map((origin) => (
            <li key={origin}>
              {origin}{' '}
              <button
                type="button"
                class="b low"
                aria-label={say`Take back ${origin}`}
                onClick={() => void browser.permissions.remove({ origins: [origin] })}
              >
                {say`Take back`}
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
