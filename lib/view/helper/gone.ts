/** What an update of the extension, or its end, leaves in a page: a frame with nobody behind it. */
import { browser } from '../../browser.ts'
import { rootOf } from '../../form/page/shadow.ts'
import { say } from '../../words/say.ts'

// Read while there still is somebody to give words.
const words = say`Gapsum was updated or switched off while it was open here. Nothing more is typed. Open it again from the toolbar: the plan shows what this page holds now.`

const css = `:host{all:initial!important}p{position:fixed;top:12px;right:12px;z-index:1;box-sizing:border-box;max-width:min(352px,100vw - 24px);margin:0;
padding:12px;border:2px solid #774a00;background:#fff;color:#1b191e;font:14px/1.4 sans-serif;cursor:pointer}`

/** Closes the helper when its extension has gone, and says so in its place until that is pressed. */
export function whenGone(host: HTMLElement, close: () => void, signal: AbortSignal): void {
  const timer = setInterval(() => {
    if (browser.runtime?.id) return
    close()
    host.remove()
    const left = document.createElement(host.localName)
    const root = left.attachShadow({ mode: 'closed' })
    const style = document.createElement('style')
    style.textContent = css
    const line = document.createElement('p')
    line.className = 'dock'
    line.role = 'alert'
    line.textContent = words
    line.addEventListener('click', () => left.remove())
    root.append(style, line)
    document.documentElement.append(left)
    left.popover = 'manual'
    left.showPopover()
  }, 250)
  signal.addEventListener('abort', () => clearInterval(timer))
}

/** Takes away what an earlier copy of the helper left: nobody answers there, and it may show another plan. */
export function clearLeft(): void {
  for (const host of document.querySelectorAll('gapsum-helper')) if (rootOf(host)?.querySelector('.dock')) host.remove()
}
