/** The invented office's form site, on this machine only. `GET /log` tells what was requested of it. */
import { readFileSync } from 'node:fs'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { bundle } from './bundle.ts'
import { layout } from './layout.ts'
import { partC } from './part-c/page.ts'
import { sheet4 } from './sheet-4/page.ts'
import { answerHost, hostPaths } from '../widget-hosts/pages.ts'

export interface Request {
  method: string
  path: string
  body: string
}

export interface Site {
  origin: string
  /** Form LC-7, part C: plain HTML. */
  plain: string
  /** Permit sheet 4: React. */
  react: string
  /** Pages that hold the widget. */
  widget: Record<keyof typeof hostPaths, string>
  requests: Request[]
  close(): Promise<void>
}

const plainPath = '/forms/lc-7/LC7-2026-0187/part-c'
const reactPath = '/permits/MB-2025-1183/sheet-4'

const policy = "default-src 'self'; img-src 'self' data:; frame-ancestors 'none'; base-uri 'none'"

interface Answer {
  type: 'text/html' | 'text/css' | 'text/javascript' | 'application/json' | 'image/svg+xml'
  text: string
  /** A policy of its own; such a page may also be kept by the browser, for going back. */
  policy?: string
}

async function read(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = []
  for await (const part of request) parts.push(part as Buffer)
  return Buffer.concat(parts).toString()
}

function home(): string {
  return layout({
    title: 'Forms in progress',
    lead: 'Go on where you stopped.',
    script: '/nothing.js',
    main: `<ul><li><a href="${plainPath}">Draught-proofing rebate, form LC-7, part C</a></li>
      <li><a href="${reactPath}">Permit MB-2025-1183, sheet 4</a></li></ul>
      <h2>Pages with the calculator in them</h2>
      <ul><li><a href="${hostPaths.form}">In a form</a></li><li><a href="${hostPaths.themed}">In a page’s own colours</a></li>
      <li><a href="${hostPaths.frame}">In a frame of another origin</a></li><li><a href="${hostPaths.events}">Without a form, by its events</a></li>
      <li><a href="${hostPaths.spanish}">With Spanish words</a></li></ul>`,
  })
}

function send(response: ServerResponse, answer: Answer | undefined): void {
  if (answer === undefined) {
    response.writeHead(404, { 'content-type': 'text/plain' }).end('There is no such page.')
    return
  }
  response
    .writeHead(200, {
      'content-type': `${answer.type}; charset=utf-8`,
      'content-security-policy': answer.policy ?? policy,
      ...(answer.policy === undefined && { 'cache-control': 'no-store' }),
    })
    .end(answer.text)
}

/** Starts the site on a free port, or on `port`. */
export async function startSite(port = 0): Promise<Site> {
  const [check, main] = await Promise.all([bundle('./part-c/check.ts'), bundle('./sheet-4/main.tsx')])
  const style = readFileSync(new URL('style.css', import.meta.url), 'utf8')
  const requests: Request[] = []

  const answer = (path: string): Answer | undefined => {
    const fixed: Record<string, Answer> = {
      '/': { type: 'text/html', text: home() },
      '/style.css': { type: 'text/css', text: style },
      '/part-c/check.js': { type: 'text/javascript', text: check },
      '/sheet-4/main.js': { type: 'text/javascript', text: main },
      '/nothing.js': { type: 'text/javascript', text: '' },
      '/log': { type: 'application/json', text: JSON.stringify(requests) },
    }
    const application = /^\/forms\/lc-7\/([\w-]+)\/part-c$/.exec(path)?.[1]
    if (application !== undefined) return { type: 'text/html', text: partC(application) }
    const permit = /^\/permits\/([\w-]+)\/sheet-4$/.exec(path)?.[1]
    if (permit !== undefined) return { type: 'text/html', text: sheet4(permit) }
    return fixed[path]
  }

  const server = createServer(async (request, response) => {
    const path = new URL(request.url ?? '/', 'http://127.0.0.1').pathname
    const asked = { method: request.method ?? '', path, body: await read(request) }
    if (path !== '/log') requests.push(asked)
    send(response, answer(path) ?? answerHost(path, request.socket.localPort ?? 0))
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The form site got no port.')
  const origin = `http://127.0.0.1:${address.port}`
  return {
    origin,
    plain: origin + plainPath,
    react: origin + reactPath,
    widget: {
      form: origin + hostPaths.form,
      themed: origin + hostPaths.themed,
      frame: origin + hostPaths.frame,
      events: origin + hostPaths.events,
      spanish: origin + hostPaths.spanish,
    },
    requests,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
