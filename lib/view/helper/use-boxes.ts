import { useEffect, useState } from 'preact/hooks'
import type { Box } from './box.ts'
import { watchBoxes } from './watch-boxes.ts'

/** The boxes of groups of elements, kept up to date while the page scrolls, resizes or changes its layout. */
export function useBoxes(groups: readonly (readonly Element[])[]): (Box | undefined)[] {
  const [boxes, setBoxes] = useState<(Box | undefined)[]>([])
  useEffect(() => watchBoxes(groups, setBoxes), [groups])
  return boxes
}
