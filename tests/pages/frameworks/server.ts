/** The pages of this folder on this machine only; each is built when it is first asked for. */
import { createServer } from 'node:http'
import { buildPage, type Built } from './build.ts'

export interface Served {
  /** Address of the page that a script draws. */
  url: (entry: string) => string
  posts: () => number
  close(): Promise<void>
}

const documentOf = (style: string): string =>
  `<!doctype html><html lang="en-US"><head><meta charset="utf-8"><title>Air leakage report</title><style>${style}</style></head><body><script src="?script"></script></body></html>`

export async function serveFrameworks(): Promise<Served> {
  const pages = new Map<string, Promise<Built>>()
  let posts = 0
  const server = createServer(async ({ method, url = '/' }, response) => {
    if (method !== 'GET') posts += 1
    const { pathname, search } = new URL(url, 'http://127.0.0.1')
    const entry = decodeURIComponent(pathname.slice(1))
    if (!/^[\w./-]+\.tsx?$/.test(entry)) return response.writeHead(404).end()
    const built = pages.get(entry) ?? buildPage(entry)
    pages.set(entry, built)
    try {
      const { script, style } = await built
      const type = search ? 'text/javascript' : 'text/html'
      return response
        .writeHead(200, { 'content-type': `${type}; charset=utf-8` })
        .end(search ? script : documentOf(style))
    } catch (error) {
      return response.writeHead(500).end(String(error))
    }
  })
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve)
  })
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The pages got no port.')
  return {
    url: (entry) => `http://127.0.0.1:${address.port}/${encodeURIComponent(entry)}`,
    posts: () => posts,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
