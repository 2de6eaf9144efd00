/** What the manifest's policy stops on a page of the extension, tried on its own book, in both browsers. */
import { createServer } from 'node:http'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchFirefox } from './firefox.ts'
import { launch } from './harness.ts'
import type { Host } from './hostile.ts'

const asked: string[] = []
const server = createServer((request, response) => {
  asked.push(request.url ?? '')
  response.writeHead(200, { 'access-control-allow-origin': '*', 'content-type': 'text/html' }).end('<p>here</p>')
})
let origin = ''

beforeAll(async () => {
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve)
  })
  const address = server.address()
  origin = `http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}`
})
afterAll(() => {
  server.closeAllConnections()
  server.close()
})

/** Tries every way out of a page, as an attached file that was opened as one would; gives what the policy stopped. */
const tryAll = (to: string) => `async function () {
  const document = this.ownerDocument
  const view = document.defaultView
  const stopped = new Set()
  const heard = (count) => new Promise((resolve) => {
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
      stopped.add(effectiveDirective.replace('-elem', ''))
      if (stopped.size === count) resolve()
    })
  })
  const all = heard(6)
  const put = (markup) => {
    const holder = document.createElement('div')
    holder.innerHTML = markup
    document.body.append(holder)
    return holder.firstElementChild
  }
  put('<img src="${to}/picture">')
  put('<iframe src="${to}/frame"></iframe>')
  put('<object data="${to}/object"></object>')
  const script = document.createElement('script')
  script.src = '${to}/script'
  document.body.append(script)
  await view.fetch('${to}/fetch').catch(() => {})
  try {
    put('<form action="${to}/form"><input name="passphrase" value="a"></form>').submit()
  } catch {}
  await all
  return [...stopped].sort().join(' ')
}`

describe.each([
  ['Chromium', launch as () => Promise<Host>],
  ['Firefox', launchFirefox as () => Promise<Host>],
])('a page of the extension in %s', (_, start) => {
  let host: Host
  beforeAll(async () => {
    host = await start()
  })
  afterAll(() => host?.close())

  it('reaches nothing outside: no picture, frame, object, script, request or form', async () => {
    asked.length = 0
    const book = await host.openPage('/book.html')
    await book.wait(/Entries/)
    const stopped = await book.ask<string>(tryAll(origin))
    expect(stopped).toBe('connect-src form-action frame-src img-src object-src script-src')
    // The server is there, and hears a page that is not the extension's.
    const page = await host.open(`${origin}/heard`)
    await page.close()
    expect(asked.filter((path) => path !== '/favicon.ico')).toEqual(['/heard'])
    await book.close()
  })
})
