/** The pages that are redesigned: markup with the page's own script, each to be opened afresh for every redesign. */
import { readFileSync } from 'node:fs'
import { bundle } from '../../browser/isolated.ts'
import { buildPage } from '../frameworks/build.ts'
import { pages } from '../frameworks/pages.ts'
import { partC } from '../site/part-c/page.ts'

export interface PageSource {
  name: string
  markup: string
  script: string
}

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8')

/** The markup with the scripts it names put in, for a page without an address. */
const whole = (path: string): string =>
  read(path).replace('<script src="state.js"></script>', () => `<script>${read('state.js')}</script>`)

/** The markup of a frame in an attribute, and in it that of the frame inside. */
function framed(path: string): string {
  return whole(path).replace(/src="(frame-[\w-]+\.html)"/, (_, inner: string) => {
    const quoted = framed(inner).replaceAll('&', '&amp;').replaceAll('"', '&quot;')
    return `srcdoc="${quoted}"`
  })
}

/** A root that is closed to the page stays open here: the isolated world of a test lacks the extension's way in. */
const opened =
  'Element.prototype.attachShadow = new Proxy(Element.prototype.attachShadow, { apply: (f, t) => Reflect.apply(f, t, [{ mode: "open" }]) });'

const empty = (script: string): string =>
  `<!doctype html><html lang="en-US"><body><script>${script}</script></body></html>`

export async function pageSources(): Promise<PageSource[]> {
  const [shadow, components, controlled] = await Promise.all([
    bundle('../pages/places/shadow.ts', 'page'),
    bundle('../pages/places/components.ts', 'page'),
    bundle('../pages/controls/controlled.tsx', 'page', 'development'),
  ])
  return [
    ...['tables', 'legends', 'agency', 'wizard', 'postback'].map((name) => ({
      name,
      markup: whole(`${name}.html`),
      script: '',
    })),
    { name: 'frames in frames', markup: framed('frames.html'), script: '' },
    { name: 'plain', markup: read('../controls/plain.html'), script: '' },
    { name: 'names', markup: read('../controls/names.html'), script: '' },
    { name: 'rebate part C', markup: partC('LC7-2026-0187'), script: '' },
    { name: 'controlled', markup: '<!doctype html><div id="root"></div>', script: controlled },
    { name: 'nested shadow roots', markup: empty(opened + read('state.js')), script: shadow },
    { name: 'web components', markup: empty(read('state.js')), script: components },
  ]
}

/** The pages of component libraries; `only` names some of them. */
export async function librarySources(only?: readonly string[]): Promise<PageSource[]> {
  const sources: PageSource[] = []
  for (const { name, entry } of pages) {
    if (entry.startsWith('../') || (only && !only.includes(name))) continue
    const { script, style } = await buildPage(entry)
    const markup = `<!doctype html><html lang="en-US"><head><style>${style}</style></head><body></body></html>`
    sources.push({ name, markup, script })
  }
  return sources
}
