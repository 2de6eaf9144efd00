/** The outlines that a frame shows. */
import { until } from './surface.ts'

export interface Drawn {
  look: string
  tag: string
  box: number[]
}

/** The outlines once they fit; undefined when they never do. */
export const drawnAs = (
  read: () => Promise<Drawn[]>,
  fits: (drawn: Drawn[]) => boolean,
): Promise<Drawn[] | undefined> =>
  until(async () => {
    const drawn = await read()
    return fits(drawn) ? drawn : undefined
  }, 8000)

export const looks = (drawn: readonly Drawn[]): string[] => drawn.map(({ look }) => look)
