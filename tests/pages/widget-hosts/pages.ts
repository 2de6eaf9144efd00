/** Pages of the invented office that hold the widget, and the page in the frame of one of them. */
import { readFileSync } from 'node:fs'
import { layout } from '../site/layout.ts'

const built = new URL('../../../.output/package/', import.meta.url)

export interface Answer {
  type: 'text/html' | 'text/javascript' | 'image/svg+xml'
  text: string
  policy: string
}

export const hostPaths = {
  form: '/widget/form',
  themed: '/widget/themed',
  frame: '/widget/frame',
  events: '/widget/events',
  spanish: '/widget/spanish',
} as const

/** In the frame. */
export const innerPath = '/widget/inner'

const names = JSON.stringify({
  'air-changes-50': { name: 'ach50', decimals: 2 },
  'flow-50': { name: 'cfm50', decimals: 0 },
})

/** The page with the plain form; `attributes` go onto the element. */
const form = layout({
  title: 'Air-leakage result',
  lead: 'The calculator is a control of this form: what it finds is sent with the rest.',
  script: '/widget/form.js',
  main: `<form id="host" method="post" action="${hostPaths.form}/sent">
      <p><label for="permit">Permit number</label> <input id="permit" name="permit" value="MB-2026-0187" /></p>
      <p><label for="house-volume">House volume, ft³</label> <input id="house-volume" name="volume" value="15,810" /></p>
      <fieldset id="group"><legend>Test</legend>
        <gapsum-widget id="w" name="test" required names='${names}' sources='{"volume":"#house-volume"}'
          figures="air-changes-50 flow-50 flow-50-as-read effective-leakage-area" targets='{"flow-50":"#copy"}'
          limits="iecc-2021-air-changes-prescriptive-zones-3-8 own"></gapsum-widget>
      </fieldset>
      <p><label for="copy">Leakage at 50 Pa, cfm</label> <input id="copy" name="copy" /></p>
      <p><button>Send</button> <button type="reset">Start again</button></p>
    </form>`,
})

const themed = layout({
  title: 'Check your own test',
  lead: 'Colours, type and what is asked are this page’s own: metric, one procedure, one limit.',
  script: '/widget/themed.js',
  main: `<div class="themed"><gapsum-widget id="w" units="si" procedure="one-point" direction="depressurize" locale="de"
        limit="passive-house-air-changes" omit="stage wind date instrument-figure flow-basis corrections"
        prefill='{"volume":"450","indoor":20,"outdoor":4.5}'>
        <h2 slot="heading">Luftdichtheit</h2></gapsum-widget></div>`,
})

const frame = layout({
  title: 'Calculator in a frame',
  lead: 'The frame tells this page what it found; the page takes it from that origin only.',
  script: '/widget/frame.js',
  main: `<iframe id="frame" title="Air-leakage calculator" src="FRAME"></iframe>
      <p>Heard from the frame: <output id="heard">nothing yet</output></p>`,
})

const events = layout({
  title: 'Results as they come',
  lead: 'No form: the page listens, and writes down what it hears.',
  script: '/widget/events.js',
  main: `<gapsum-widget id="w" subject="ducts" prefill='{"floorArea":2000}'></gapsum-widget>
      <h2>Heard</h2><ul id="heard"></ul>`,
})

const spanish = layout({
  title: 'Resultado de fuga de aire',
  lead: 'La calculadora con palabras en español.',
  script: '/widget/spanish.js',
  main: `<gapsum-widget id="w" prefill='{"volume":8726}'></gapsum-widget>`,
}).replace('lang="en"', 'lang="es"')

const inner = `<!doctype html>
<html lang="en"><head><meta charset="utf-8" /><title>Calculator</title><link rel="stylesheet" href="/style.css" />
<script src="/widget/gapsum-widget.js" defer></script><script type="module" src="/widget/inner.js"></script></head>
<body class="bare"><gapsum-widget id="w" prefill='{"volume":15810}'></gapsum-widget></body></html>`

const withWidget = (page: string, file = 'gapsum-widget.js'): string =>
  page
    .replace('<link rel="icon" href="data:," />', '')
    .replace('</head>', `<script src="/widget/${file}" defer></script></head>`)

/** By path: the markup. */
export const hostPages: Record<string, string> = {
  [hostPaths.form]: withWidget(form),
  [hostPaths.themed]: withWidget(themed),
  [hostPaths.frame]: frame.replace('<link rel="icon" href="data:," />', ''),
  [hostPaths.events]: withWidget(events),
  [hostPaths.spanish]: withWidget(spanish, 'gapsum-widget.es.js'),
  [innerPath]: inner,
}

/** What a host answers: the strictest policy that a page with scripts, styles, a form and one frame can have. */
export function answerHost(path: string, port: number): Answer | undefined {
  const frames = `http://localhost:${port}`
  const policy = (ancestors: string) =>
    `default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; form-action 'self'; base-uri 'none'; frame-src ${frames}; frame-ancestors ${ancestors}; require-trusted-types-for 'script'`
  const page = hostPages[path]
  if (page !== undefined)
    return {
      type: 'text/html',
      text: page.replace('FRAME', frames + innerPath),
      policy: policy(path === innerPath ? `http://127.0.0.1:${port}` : "'none'"),
    }
  // Browsers ask for it by themselves.
  if (path === '/favicon.ico')
    return { type: 'image/svg+xml', text: '<svg xmlns="http://www.w3.org/2000/svg"/>', policy: policy("'none'") }
  if (path === `${hostPaths.form}/sent`)
    return { type: 'text/html', text: '<!doctype html><title>Sent</title><h1>Sent</h1>', policy: policy("'none'") }
  const [, file] = /^\/widget\/(gapsum-widget(?:\.es)?\.js)$/.exec(path) ?? []
  const script = file === undefined ? hostScripts[path] : readFileSync(new URL(file, built), 'utf8')
  return script === undefined ? undefined : { type: 'text/javascript', text: script, policy: policy("'none'") }
}

/** By path: the scripts of the pages, as a host would write them by hand. */
export const hostScripts: Record<string, string> = {
  '/widget/form.js': '',
  '/widget/themed.js': '',
  '/widget/spanish.js': '',
  '/widget/events.js': `
const heard = document.getElementById('heard')
document.getElementById('w').addEventListener('gapsum-report', ({ detail }) => {
  const flow = detail.report?.figures['duct-flow-25']
  if (!flow) return
  const line = document.createElement('li')
  line.textContent = flow.value.toFixed(1) + ' ' + flow.unit
  heard.replaceChildren(line)
})
`,
  '/widget/inner.js': `
const parentOrigin = 'http://127.0.0.1:' + location.port
document.getElementById('w').addEventListener('gapsum-report', ({ detail }) => {
  const found = detail.report?.figures['air-changes-50']
  if (found) parent.postMessage({ type: 'air-changes', value: found.value }, parentOrigin)
})
`,
  '/widget/frame.js': `
const frame = document.getElementById('frame')
const frameOrigin = new URL(frame.src).origin
addEventListener('message', (event) => {
  if (event.origin !== frameOrigin || event.source !== frame.contentWindow) return
  if (event.data?.type !== 'air-changes' || typeof event.data.value !== 'number') return
  document.getElementById('heard').textContent = event.data.value.toFixed(2) + ' air changes per hour'
})
`,
}
