/** The helper in a frame of another origin: it tells the page around it what is there, outlines and writes it. */
import { mostListed } from '../../bounds.ts'
import { survey, type Control } from '../../form/page/controls.ts'
import type { Written } from '../../form/page/image.ts'
import { settle } from '../../form/fill/read.ts'
import { watchRoots } from '../../form/page/watch-roots.ts'
import { whenQuiet } from '../../form/page/when-quiet.ts'
import { write } from '../../form/kinds/write.ts'
import { keyOf } from './control-key.ts'
import { frameMarks } from './frame-marks.ts'
import { imageOf } from './images.ts'
import { send } from './send.ts'
import { say } from '../../words/say.ts'

export interface Agent {
  /** Says again what the frame shows, to a helper that has just opened. */
  tell: () => void
  write: (key: string, text: string) => Promise<Written>
  /** Draws outlines on the frame's controls; a click may choose one. */
  mark: ReturnType<typeof frameMarks>
}

/** Whether the page around this frame cannot look into it. */
export function isApart(): boolean {
  if (window === window.top) return false
  try {
    return !window.parent.document
  } catch {
    return true
  }
}

export function serve(css: string, signal: AbortSignal): Agent {
  let known: Control[] = []
  let last = ''
  const tell = (again = false) => {
    if (signal.aborted) return
    // A file stays with the person: it does not travel between frames.
    const { controls, roots } = survey(document, mostListed)
    watch(roots)
    known = controls.filter(({ kind }) => kind !== 'file')
    const images = known.map(imageOf)
    const now = JSON.stringify(images)
    if (now === last && !again) return
    last = now
    void send({ type: 'frame', images })
  }
  const soon = whenQuiet(() => tell(), 200, signal)
  const watch = watchRoots(soon, signal)
  for (const type of ['input', 'change'])
    document.addEventListener(type, soon, { capture: true, passive: true, signal })
  window.addEventListener('pagehide', () => void send({ type: 'frame', images: [] }), { signal })
  tell()
  const controlOf = (wanted: string) => known.find(({ element }) => keyOf(element) === wanted)
  return {
    mark: frameMarks(css, controlOf, (key) => void send({ type: 'frame-pick', key }), signal),
    tell: () => tell(true),
    write: async (key, text) => {
      const control = controlOf(key)
      if (!control) return { reason: say`is no longer in the frame` }
      const written = await write(control, text)
      await settle([document, control.element], { quiet: 100, limit: 1500 }, signal)
      tell()
      return written
    },
  }
}
