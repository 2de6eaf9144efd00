import { useLayoutEffect, useState } from 'preact/hooks'
import { hashOf, routeOf, type Route } from './route.ts'

/** The place in the book, kept in the address so that back, forward and bookmarks work. */
export function useRoute(): [Route, (route: Route) => void] {
  const [route, setRoute] = useState(() => routeOf(location.hash))
  useLayoutEffect(() => {
    const leaving = new AbortController()
    addEventListener('hashchange', () => setRoute(routeOf(location.hash)), { signal: leaving.signal })
    return () => leaving.abort()
  }, [])
  return [route, (next) => location.assign(hashOf(next))]
}
