/** The isolated world of the extension in a page: where the helper runs, with the browser's way into closed roots. */
import type { Page } from 'puppeteer-core'
import type { Session } from './harness.ts'

/**
 * Value of an expression in the world of the helper that is open in the page; promises are awaited.
 * @throws when no helper is open there
 */
export async function inExtensionWorld<T>(session: Session, page: Page, expression: string): Promise<T> {
  const cdp = await page.createCDPSession()
  try {
    const { frameTree } = await cdp.send('Page.getFrameTree')
    let world: number | undefined
    cdp.on('Runtime.executionContextCreated', ({ context }) => {
      const { frameId } = context.auxData as { frameId?: string }
      if (frameId === frameTree.frame.id && context.origin === `chrome-extension://${session.extension.id}`)
        world = context.id
    })
    await cdp.send('Runtime.enable')
    if (world === undefined) throw new Error('The extension has put nothing into this page.')
    const { result, exceptionDetails } = await cdp.send('Runtime.evaluate', {
      expression,
      contextId: world,
      awaitPromise: true,
      returnByValue: true,
    })
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
    return result.value as T
  } finally {
    await cdp.detach()
  }
}
