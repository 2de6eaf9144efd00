/** The helper's place in a page: outlines in a closed shadow root, and above them the frame that holds the dock. */
import type { FromDock } from '../../messages/dock-messages.ts'
import { ownHosts } from '../../form/page/own-host.ts'
import { sheetBelow } from './bring-into-view.ts'

export interface Place {
  host: HTMLElement
  root: ShadowRoot
  /** Where outlines are drawn. */
  layer: HTMLElement
  frame: HTMLIFrameElement
  /** Gives the frame the size that the dock asks for. */
  resize: (wanted: Pick<Extract<FromDock, { type: 'place' }>, 'height' | 'wide' | 'side'>) => void
}

const frameCss = `:host{all:initial!important}
.dock{display:block;position:fixed;border:0;margin:0;padding:0;visibility:hidden;z-index:1;color-scheme:light dark;background:Canvas;
box-shadow:0 1px 2px rgb(27 25 30/.1),0 8px 28px rgb(27 25 30/.16)}`

/** @param address of the dock's page */
export function place(css: string, address: string, signal: AbortSignal): Place {
  const host = document.createElement('gapsum-helper')
  ownHosts.add(host)
  const root = host.attachShadow({ mode: 'closed' })
  const style = document.createElement('style')
  style.textContent = frameCss + css
  const layer = document.createElement('div')
  layer.className = 'marks'
  layer.ariaHidden = 'true'
  const frame = document.createElement('iframe')
  frame.className = 'dock'
  frame.allow = 'clipboard-write'
  frame.src = address
  root.append(style, layer, frame)
  document.documentElement.append(host)
  // The dock's sizes go by the reader's own font size; the page's must not scale it. They are written as plain numbers:
  // a page may say of any custom property what it can hold.
  const rem = Number.parseFloat(getComputedStyle(host).fontSize)
  const px = (share: number) => `${share * rem}px`

  let wanted: Parameters<Place['resize']>[0] | undefined
  let put = ''
  const resize = () => {
    if (!wanted) return
    const sheet = innerWidth <= sheetBelow
    const { wide, side } = wanted
    const most = sheet ? (wide ? '80dvh' : `max(58dvh,min(${px(20)},100dvh))`) : `calc(100dvh - ${px(1.5)})`
    const where = sheet
      ? 'inset:auto 0 0 0;width:100%'
      : `top:${px(0.75)};${side}:${px(0.75)};width:min(${px(wide ? 41 : 22)},100vw - ${px(1.5)})`
    // What the page zooms is zoomed with all it holds, the top layer too: the frame is scaled back.
    const zoom = (host as { currentCSSZoom?: number }).currentCSSZoom ?? 1
    const now = `visibility:visible;height:${wanted.height}px;max-height:${most};${where};zoom:${1 / zoom}`
    if (now !== put) frame.style.cssText = put = now
  }
  addEventListener('resize', resize, { signal })
  // The layer fills the window: it has another size as soon as the page is zoomed, and this is told before it is drawn.
  const zoomed = new ResizeObserver(resize)
  zoomed.observe(layer)
  const timer = setInterval(resize, 250)

  signal.addEventListener('abort', () => {
    clearInterval(timer)
    zoomed.disconnect()
    host.remove()
  })
  return {
    host,
    root,
    layer,
    frame,
    resize: (size) => {
      wanted = size
      resize()
    },
  }
}
