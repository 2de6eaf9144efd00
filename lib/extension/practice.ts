/** The form to practise on: a page of the extension itself, which needs no network and takes no script from outside. */
import { browser } from '../browser.ts'
import type { ToHelper } from '../messages/messages.ts'
import { say } from '../words/say.ts'

export const channelName = 'gapsum-practice'

/** What goes to a practice form, and what comes back: that it is shown, or why not. */
export type ToPractice = { tab: number; task: ToHelper }
export type FromPractice = { from: number; refusal: string }

const patience = 2000

/** Empty where there is no extension. */
const address = (): string => (browser as typeof browser | undefined)?.runtime?.getURL('/practice.html') ?? ''

export const isPractice = (url: string): boolean => url !== '' && url.split(/[?#]/)[0] === address()

/** The page that shows a PDF form, and is filled like any other. */
const pdfAddress = () => (browser as typeof browser | undefined)?.runtime?.getURL('/pdf-form.html') ?? ''

export const openPdfForm = (): Promise<unknown> => browser.tabs.create({ url: pdfAddress() })

/** A form in a page of the extension itself. */
export const isOwnForm = (url: string): boolean =>
  isPractice(url) || (url !== '' && url.split(/[?#]/)[0] === pdfAddress())

export const openPractice = (): Promise<unknown> => browser.tabs.create({ url: address() })

/**
 * Hands a task to the practice form in a tab.
 * @throws Error that says what the person can do, when it does not answer or is busy.
 */
export function sendPractice(tab: number, task: ToHelper): Promise<void> {
  const channel = new BroadcastChannel(channelName)
  return new Promise<void>((resolve, reject) => {
    const end = (why: string) => {
      clearTimeout(timer)
      channel.close()
      if (why) reject(new Error(why))
      else resolve()
    }
    const timer = setTimeout(() => end(say`The practice form did not answer. Reload it and try again.`), patience)
    channel.addEventListener('message', ({ data }: MessageEvent<ToPractice | FromPractice>) => {
      if ('from' in data && data.from === tab) end(data.refusal)
    })
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
    channel.postMessage({ tab, task } satisfies ToPractice)
  })
}
