/** What the built files weigh after gzip, against their aims. */
import { packed, read, weightOf } from '../built/weigh.ts'
import type { Row } from './part.ts'

const row = (what: string, bytes: number, aim?: number): Row => ({
  what,
  value: bytes / 1000,
  unit: 'kB',
  ...(aim !== undefined && { aim: `at most ${aim}`, met: bytes <= aim * 1000 }),
})

export default function weights(): Row[] {
  return [
    row('scripts that open the popup', weightOf('chrome-mv3/popup.html'), 60),
    row('scripts that open the sidebar', weightOf('chrome-mv3/sidepanel.html'), 60),
    row('scripts that open the book', weightOf('chrome-mv3/book.html')),
    row('what maps and fills a page', packed(read('chrome-mv3/helper.js')), 36.5),
    row('what joins it for controls drawn by the page', packed(read('chrome-mv3/extra.js'))),
    row('the dock in its frame', weightOf('chrome-mv3/dock.html'), 90.5),
    row('what serves a frame of another origin', packed(read('chrome-mv3/frame.js'))),
    row('the engine', packed(read('package/engine.js')), 12),
    row('engine and widget in one file', packed(read('package/gapsum-widget.js')), 40),
  ]
}
