/** Outlines in a frame of another origin, drawn by the script there as the page around it asks. */
import type { Control } from '../../form/page/controls.ts'
import { ownHosts } from '../../form/page/own-host.ts'
import type { ToHelper } from '../../messages/messages.ts'
import { drawMarks } from './page-marks.ts'
import { pickIn } from './pick-in.ts'

/** A layer that the page can neither read nor style, and that nothing in it answers to. */
function layerHost(css: string) {
  const host = document.createElement('gapsum-helper')
  ownHosts.add(host)
  host.popover = 'manual'
  const style = document.createElement('style')
  style.textContent = `:host{all:initial!important}${css}`
  const layer = document.createElement('div')
  layer.className = 'marks'
  host.attachShadow({ mode: 'closed' }).append(style, layer)
  return { host, layer }
}

type Asked = Extract<ToHelper, { type: 'marks' }>

/**
 * @param controlOf the control that has this key, if it is still there
 * @param onPick hears of the control that the person chose
 * @returns draws what is asked for in place of what was drawn before; nothing asked for, nothing left in the frame
 */
export function frameMarks(
  css: string,
  controlOf: (key: string) => Control | undefined,
  onPick: (key: string) => void,
  signal: AbortSignal,
): (asked: Asked) => void {
  let place: ReturnType<typeof layerHost> | undefined
  let round = new AbortController()
  const end = () => {
    round.abort()
    place?.host.remove()
    place = undefined
  }
  signal.addEventListener('abort', end)

  return ({ pick, marks }) => {
    round.abort()
    const drawn = marks.flatMap((mark) => {
      const control = controlOf(mark.key)
      return control ? [{ ...mark, elements: control.elements }] : []
    })
    if (signal.aborted || drawn.length === 0) return end()
    const { host, layer } = (place ??= layerHost(css))
    round = new AbortController()
    // Shown anew it lies above what the frame has opened since.
    if (!host.isConnected) document.documentElement.append(host)
    host.hidePopover()
    host.showPopover()

    let hovered: string | undefined
    const put = drawMarks(layer, drawn, round.signal, ({ key, look }) =>
      key === hovered && look !== 'now' ? 'lit' : look,
    )
    const asked = drawn.find(({ look }) => look === 'now')
    asked?.elements[0]?.scrollIntoView({ block: 'nearest', behavior: 'instant' })
    if (!pick) return

    const keys = new Map(
      drawn.flatMap(({ key, elements }) => elements.map((element): [Element, string] => [element, key])),
    )
    const views = [...keys.keys()].map(({ ownerDocument }) => ownerDocument.defaultView)
    pickIn(
      {
        host,
        windows: [...new Set(views.filter((view) => view !== null))],
        keyOf: (element) => keys.get(element),
        onHover: (key) => {
          hovered = key
          put()
        },
        onPick,
      },
      round.signal,
    )
  }
}
