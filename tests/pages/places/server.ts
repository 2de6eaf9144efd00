/** The pages of this folder on this machine only, under two names of it, so that a frame can be of another origin. */
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { bundle } from '../../browser/isolated.ts'

export interface Places {
  /** One origin, and another that the browser keeps apart from it. */
  origin: string
  other: string
  posts: () => number
  close(): Promise<void>
}

const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8')

const scripted = (name: string): string =>
  `<!doctype html><html lang="en-US"><meta charset="utf-8"><title>${name}</title><body><script src="state.js"></script><script src="${name}.js"></script></body></html>`

/** A form of the server's own, drawn anew after every change: the page submits itself and comes back. */
function reloading(held: Readonly<Record<string, string>>): string {
  const field = (key: string, label: string) =>
    `<p><label for="${key}">${label}</label> <input id="${key}" name="${key}" value="${held[key] ?? ''}" data-is="${key}"></p>`
  const stage = ['', 'Rough-in', 'Final'].map(
    (one) => `<option ${held['stage'] === one ? 'selected' : ''}>${one}</option>`,
  )
  return `<!doctype html><html lang="en-US"><meta charset="utf-8"><title>Permit sheet</title><h1>Permit sheet</h1>
    <form action="reload"><h2>Building</h2>${field('street', 'Street address')}
    <p><label for="stage">Stage</label> <select id="stage" name="stage" onchange="this.form.submit()" data-is="stage">${stage.join('')}</select></p>
    ${field('permit', 'Permit number')}${field('volume', 'Conditioned volume (cu ft)')}</form>
    <script src="state.js"></script><script>for (const each of document.querySelectorAll('[data-is]')) keep(each.dataset.is, each.value)</script></html>`
}

/** The steps of a wizard whose pages have addresses of their own. */
const walk: readonly [path: string, title: string, fields: readonly [key: string, label: string][]][] = [
  [
    'site',
    'Building',
    [
      ['street', 'Street address'],
      ['town', 'City'],
      ['volume', 'Conditioned volume (cu ft)'],
    ],
  ],
  [
    'test',
    'After work',
    [
      ['cfm50', 'CFM50'],
      ['ach50', 'ACH50'],
    ],
  ],
  [
    'tester',
    'Tester',
    [
      ['tester', 'Tester, printed name'],
      ['licence', 'Licence number'],
    ],
  ],
]

function step(path: string): string | undefined {
  const at = walk.findIndex(([name]) => name === path)
  const [, title, fields] = walk[at] ?? []
  if (!title || !fields) return undefined
  const next = walk[at + 1]?.[0]
  return `<!doctype html><html lang="en-US"><meta charset="utf-8"><title>Rebate</title><h1>Rebate, step ${at + 1} of 3</h1><form><h2>${title}</h2>
    ${fields.map(([key, label]) => `<p><label for="${key}">${label}</label> <input id="${key}" name="${key}" data-is="${key}"></p>`).join('')}
    ${next ? `<a href="${next}">Continue</a>` : ''}</form><script src="/state.js"></script></html>`
}

export async function startPlaces(): Promise<Places> {
  const [shadow, components] = await Promise.all(
    ['shadow', 'components'].map((name) => bundle(`../pages/places/${name}.ts`, 'page')),
  )
  let posts = 0
  let port = 0
  const text = (url: URL): string | undefined => {
    const name = url.pathname.slice(1)
    if (name === 'shadow.js') return shadow
    if (name === 'components.js') return components
    if (name === 'shadow.html' || name === 'components.html') return scripted(name.replace('.html', ''))
    if (name === 'reload') return reloading(Object.fromEntries(url.searchParams))
    if (name.startsWith('walk/')) return step(name.slice(5))
    if (name === 'embedding.html')
      return `<!doctype html><html lang="en-US"><meta charset="utf-8"><title>Rebate portal</title><h1>Rebate portal</h1>
        <p><label for="program">Application number</label> <input id="program" data-is="program"></p>
        <iframe id="form" title="Form" width="700" height="500" src="http://localhost:${port}/frame-outer.html"></iframe>
        <script src="state.js"></script></html>`
    return /^[\w-]+\.(html|js)$/.test(name) ? read(name) : undefined
  }
  const server = createServer((request, response) => {
    if (request.method !== 'GET') posts += 1
    let body: string | undefined
    try {
      body = text(new URL(request.url ?? '/', 'http://127.0.0.1'))
    } catch {
      body = undefined
    }
    const type = request.url?.endsWith('.js') ? 'text/javascript' : 'text/html'
    response.writeHead(body === undefined ? 404 : 200, { 'content-type': `${type}; charset=utf-8` }).end(body)
  })
  await new Promise<void>((resolve) => {
    server.listen(0, resolve)
  })
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The pages got no port.')
  port = address.port
  return {
    origin: `http://127.0.0.1:${port}`,
    other: `http://localhost:${port}`,
    posts: () => posts,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
