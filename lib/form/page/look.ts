/** A look at a whole page, within which nothing of it changes: what is asked again and again is worked out once. */

let look = 0
let looking = false

/** Does what looks at the page; what {@link inLook} has kept is forgotten at its end. */
export function lookOnce<T>(work: () => T): T {
  if (looking) return work()
  looking = true
  look++
  try {
    return work()
  } finally {
    looking = false
  }
}

/** A place for what is worked out during one look; outside of a look there is none. */
export function inLook<T>(make: () => T): () => T | undefined {
  let kept: { look: number; store: T } | undefined
  return () => {
    if (!looking) return (kept = undefined)
    if (kept?.look !== look) kept = { look, store: make() }
    return kept.store
  }
}
