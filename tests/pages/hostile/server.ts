/** Pages that mean harm, on this machine only. All stand at one path, so that one form map serves them. */
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'

export interface Hostile {
  /** Address of a page by the name of its file. */
  at: (name: string, more?: string) => string
  posts: () => number
  /**
   * What is done while the page with the steps waits for its answer, in the middle of a fill, with what it holds then;
   * the answer may be an address to go to.
   */
  onStep: (act: (held: string) => Promise<string>) => void
  /** What the page with the steps held when it went away. */
  last: () => string
  forget: () => void
  close(): Promise<void>
}

const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8')

/** What the strict page forbids: everything but its own script, and texts that become markup. */
const strict =
  "default-src 'none'; script-src 'self'; require-trusted-types-for 'script'; trusted-types 'none'; base-uri 'none'; sandbox allow-scripts allow-same-origin allow-forms"

function answer(url: URL): string | undefined {
  if (url.pathname === '/watch.js') return read('watch.js')
  const name = url.searchParams.get('page') ?? ''
  if (url.pathname !== '/form' || !/^[a-z]+$/.test(name)) return undefined
  return read(`${name}.html`)
    .replace('<!-- form -->', () => read('form.html'))
    .replace('<!-- parts -->', () => parts(url.searchParams))
}

/** The attacks of parts/, each for one control: `town=fades&cfm50=card`. */
function parts(asked: URLSearchParams): string {
  const all = [...asked].filter(([name, part]) => name !== 'page' && /^[a-z]+$/.test(part))
  return all
    .map(([name, part]) => `<script>attacks.push(['${name}', (field) => {\n${read(`parts/${part}.js`)}}])</script>`)
    .join('\n')
}

export async function startHostile(): Promise<Hostile> {
  let posts = 0
  let [last, act] = ['', (_held: string) => Promise.resolve('')]
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? '/', 'http://127.0.0.1')
    const held = url.searchParams.get('held') ?? ''
    if (url.pathname === '/step') return void act(held).then((then) => response.end(then))
    if (url.pathname === '/last') {
      last = held
      return void response.end()
    }
    if (request.method !== 'GET') posts += 1
    let body: string | undefined
    try {
      body = answer(url)
    } catch {
      body = undefined
    }
    response
      .writeHead(body === undefined ? 404 : 200, {
        'content-type': `${url.pathname.endsWith('.js') ? 'text/javascript' : 'text/html'}; charset=utf-8`,
        ...(url.searchParams.get('page') === 'strict' && { 'content-security-policy': strict }),
      })
      .end(body)
  })
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve)
  })
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The pages got no port.')
  return {
    at: (name, more = '') => `http://127.0.0.1:${address.port}/form?page=${name}${more}`,
    posts: () => posts,
    onStep: (now) => {
      act = now
    },
    last: () => last,
    forget: () => {
      last = ''
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
