/** Mapping, as far as it is about the page: what controls there are, outlines on them, and presses that choose one. */
import type { FromDock, PageImage } from '../../messages/dock-messages.ts'
import { mostListed } from '../../bounds.ts'
import { survey, type LeftOut } from '../../form/page/controls.ts'
import { farControl, markFrames, onFrames } from '../../form/page/far.ts'
import type { FarMark } from '../../form/page/image.ts'
import { addressOf } from '../../form/map/address.ts'
import type { ToHelper } from '../../messages/messages.ts'
import { say as words } from '../../words/say.ts'
import { bringIntoView } from './bring-into-view.ts'
import { closedOrigins } from './closed-origins.ts'
import { keyOf } from './control-key.ts'
import { pageImageOf } from './images.ts'
import type { Mark } from './page-marks.ts'
import { pickIn } from './pick-in.ts'
import { send } from './send.ts'
import type { Part, Stage, Task } from './stage.ts'
import { watchSurvey } from './watch-survey.ts'

let picked: ((key: string) => void) | undefined

/** Takes the choice of a control in a frame of another origin, which the frame's own script has heard. */
export function takePick({ frame, key }: Extract<ToHelper, { type: 'picked' }>): void {
  const control = farControl(frame, key)
  if (control) picked?.(keyOf(control.element))
}

export function mapPart(task: Extract<Task, { type: 'map' }>, stage: Stage): Part {
  const { material } = task
  const { signal, say, host } = stage
  const view = stage.view()
  let { map } = task
  let controls: PageImage[] = []
  let leftOut: LeftOut[] = []
  let more = false
  let elements = new Map<string, readonly HTMLElement[]>()
  let keys = new Map<Element, string>()
  let wanted: readonly FarMark[] = []
  let picking = new AbortController()

  const { origin, path } = addressOf(location.href)
  const heading =
    document.querySelector('h1')?.textContent?.replaceAll(/\s+/g, ' ').trim() || document.title.trim() || location.host
  const tellPage = () =>
    say({
      type: 'page',
      controls,
      leftOut: leftOut.map(({ element, name, reason, detail }) => ({ key: keyOf(element), name, reason, detail })),
      more,
      origins: closedOrigins(),
    })
  const tell = () => {
    say({
      type: 'map',
      view,
      material,
      ...(map && { map }),
      href: `${origin}${path}`,
      heading: heading.slice(0, 80),
    })
    tellPage()
  }

  const outline = () => {
    const marks = wanted.flatMap(({ key, look, tag }): Mark[] => {
      const found = elements.get(key)
      return found ? [{ elements: found, look, tag }] : []
    })
    markFrames(marks, (frame, own) => void send({ type: 'frame-marks', frame, pick: true, marks: own }))
    const left = leftOut
      .filter(({ reason }) => reason !== 'hidden')
      .map(({ element }): Mark => ({ elements: [element], look: 'left', tag: words`left to you` }))
    stage.mark([...marks, ...left])
  }

  const pick = () => {
    picking.abort()
    picking = new AbortController()
    const views = [...keys.keys()].map(({ ownerDocument }) => ownerDocument.defaultView)
    pickIn(
      {
        host,
        windows: [...new Set<Window>([window, ...views.filter((each) => each !== null)])],
        keyOf: (element) => keys.get(element),
        onHover: (key) => say({ type: 'hovered', key: key ?? '' }),
        onPick: (key) => say({ type: 'picked', key }),
      },
      picking.signal,
    )
  }

  picked = (key) => say({ type: 'picked', key })
  watchSurvey(
    (seen) => {
      ;({ leftOut, more } = seen)
      controls = seen.controls.map(pageImageOf)
      elements = new Map()
      keys = new Map()
      for (const control of seen.controls) {
        const key = keyOf(control.element)
        elements.set(key, control.elements)
        for (const element of control.elements) keys.set(element, key)
      }
      pick()
      tellPage()
      outline()
    },
    signal,
    stage.know,
    () => survey(document, mostListed),
  )
  onFrames(tellPage, signal)
  signal.addEventListener('abort', () => {
    picking.abort()
    picked = undefined
    markFrames([], (frame) => void send({ type: 'frame-marks', frame, pick: false, marks: [] }))
  })

  const hear = (message: FromDock) => {
    switch (message.type) {
      case 'marks':
        wanted = message.marks
        return outline()
      case 'bring': {
        const found = elements.get(message.to)
        return found && bringIntoView(found)
      }
      case 'mapped':
        map = message.map
        return undefined
      case 'to-plan':
        return stage.show({ type: 'plan', material, map: message.map })
    }
  }
  return { hear, tell }
}
