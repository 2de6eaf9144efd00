import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** A component whose code is read when it is first shown, so that it does not weigh on the opening of the popup. */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let loaded: ComponentType<P> | undefined
  return function Later(props: P) {
    const [, arrived] = useState(loaded !== undefined)
    useEffect(() => {
      if (loaded) return
      let shown = true
      const arrive = async () => {
        loaded = await load()
        if (shown) arrived(true)
      }
      void arrive()
      return () => {
        shown = false
      }
    }, [])
    const Component = loaded
    return Component ? <Component {...props} /> : null
  }
}
