import { useEffect, useState } from 'preact/hooks'
import { found, type Found } from '../../book/journal/told.ts'
import { subscribe } from '../../book/notice.ts'

/** What a comparison of the book's copies found, until the person has read it. */
export function useTold(): Found | undefined {
  const [told, setTold] = useState<Found>()
  useEffect(() => {
    const look = () => void found().then(setTold, () => undefined)
    look()
    return subscribe(({ what }) => what === 'copies' && look())
  }, [])
  return told
}
