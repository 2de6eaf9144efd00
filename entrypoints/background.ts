import browser, { type Runtime } from 'webextension-polyfill'
import { defineBackground } from 'wxt/utils/define-background'
import { bringExtra } from '../lib/extension/bring-extra.ts'
import { admitDock } from '../lib/extension/docks.ts'
import { hearFillPort } from '../lib/extension/fill-ports.ts'
import { joinAllowed, relay } from '../lib/extension/frames.ts'
import { meetAll } from '../lib/extension/meet-all.ts'
import { runCommand } from '../lib/extension/run-command.ts'
import { answerSuggest } from '../lib/extension/suggestions.ts'
import { answer } from '../lib/extension/answer.ts'
import { closeUnended } from '../lib/book/fills.ts'
import { begunSince } from '../lib/book/under-way.ts'
import { compareAtStart } from '../lib/book/journal/compare.ts'
import type { Device, Job } from '../lib/job/schema.ts'
import { closeAbandoned, openBook, openSites } from '../lib/extension/open-book.ts'
import '../lib/job/with-fans.ts'
import { basisOf } from '../lib/report/basis.ts'

const failed = (error: unknown) => console.error('Open fills could not be ended; the book tries again later.', error)

export default defineBackground(() => {
  const engine = browser.runtime.getManifest().version
  const surroundings = {
    self: browser.runtime.id,
    engine,
    openBook,
    write: (job: Job, devices: Device[]) => basisOf(job, devices, engine),
  }
  browser.runtime.onMessage.addListener(
    (message: unknown, sender: Runtime.MessageSender) =>
      relay(message, sender, openSites) ??
      answerSuggest(message, sender, surroundings.self) ??
      admitDock(
        message,
        sender,
        surroundings.self,
        (path) => browser.windows.create({ url: browser.runtime.getURL(path), type: 'popup', width: 720, height: 760 }),
        async (tab, css) =>
          location.protocol === 'moz-extension:' &&
          browser.scripting.insertCSS({ target: { tabId: tab }, css, origin: 'USER' }),
      ) ??
      bringExtra(message, sender, surroundings.self, (tab, script) =>
        browser.scripting.executeScript({ target: { tabId: tab }, files: [script] }),
      ) ??
      meetAll(message, sender, surroundings.self, (tab, on, css) => {
        const change = { target: { tabId: tab, allFrames: true }, css, origin: 'USER' } as const
        return on ? browser.scripting.insertCSS(change) : browser.scripting.removeCSS(change)
      }) ??
      answer(message, sender, surroundings),
  )
  browser.runtime.onConnect.addListener((port) => hearFillPort(port, surroundings.self))
  joinAllowed()
  browser.commands.onCommand.addListener((command, tab) => void runCommand(command, tab))

  // After a start of the browser no fill runs, and the numbers of tabs mean other tabs. A book of an earlier version gets
  // its second copy at an update; what was being filled then, nobody goes on with. What began meanwhile goes on.
  const endOlder = () => {
    const from = new Date()
    void compareAtStart()
      .then(() => closeUnended(begunSince(from)))
      .catch(failed)
  }
  browser.runtime.onStartup.addListener(endOlder)
  browser.runtime.onInstalled.addListener(endOlder)
  browser.tabs.onRemoved.addListener((tab) => void closeUnended((open) => open.tab !== tab).catch(failed))
  closeAbandoned().catch(failed)
})
