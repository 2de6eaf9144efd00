import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session, type Surface } from './harness.ts'

let site: Site
let session: Session
let popup: Surface

beforeEach(async () => {
  site = await startSite()
  session = await launch()
  popup = await session.openPopup(await session.open(site.plain))
  await popup.click('button', 'Start a job')
  await popup.get('textbox', 'House pressure, point 1, Pa')
})
afterEach(async () => {
  await session.close()
  await site.close()
})

const pressure = (point: number) => `House pressure, point ${point}, Pa`
const flow = (point: number) => `Flow, point ${point}, cfm`

/** Pastes as the browser would, into the cell that has the focus. */
async function paste(text: string): Promise<void> {
  await popup.page.evaluate((pasted) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', pasted)
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true })
    document.activeElement?.dispatchEvent(event)
  }, text)
}

/** The longest time, in ms, in which the popup did not answer while `work` ran. */
async function longestStall(work: () => Promise<void>): Promise<number> {
  await popup.page.evaluate(() => {
    const watch = window as unknown as { longest: number; ticking: number }
    watch.longest = 0
    let last = performance.now()
    watch.ticking = window.setInterval(() => {
      const now = performance.now()
      watch.longest = Math.max(watch.longest, now - last)
      last = now
    }, 10)
  })
  await work()
  return popup.page.evaluate(async () => {
    await new Promise((resolve) => {
      setTimeout(resolve, 500)
    })
    const watch = window as unknown as { longest: number; ticking: number }
    clearInterval(watch.ticking)
    return watch.longest
  })
}

describe('cells that cannot be right', () => {
  const bad: [what: string, pressure: string, flow: string][] = [
    ['words', 'about fifty', '790'],
    ['two decimal points', '-50.1.2', '790'],
    ['nothing but a sign', '-', '790'],
    ['an infinite number', '-50', '1e999'],
    ['a negative flow', '-50', '-790'],
    ['no pressure at all', '0', '790'],
    ['markup', '<b>50</b>', '790'],
    ['another script', '٥٠x', '790'],
  ]
  it.each(bad)('%s: a sentence by the cell, nothing lost, no figure from it', async (_, first, second) => {
    await popup.type('textbox', pressure(1), first)
    await popup.type('textbox', flow(1), second)
    await popup.key('Tab')
    const finding = await popup.finding()
    expect(finding).toMatch(/^[A-Z“"'\d-].{8,}\.$/s)
    expect(await popup.value('textbox', pressure(1))).toBe(first)
    expect(await popup.value('textbox', flow(1))).toBe(second)
    const text = await popup.text()
    expect(text).not.toMatch(/NaN|Infinity|undefined|\[object/)
    expect(text).not.toMatch(/CFM50\s+\d/)

    // The person puts it right and goes on.
    await popup.type('textbox', pressure(1), '-50')
    await popup.type('textbox', flow(1), '790')
    await popup.wait(/CFM50/)
  })
})

describe('large pastes', () => {
  it('takes 5,000 points without standing still', async () => {
    await popup.click('textbox', pressure(1))
    const block = Array.from({ length: 5000 }, (_, index) => `-${10 + (index % 50)}\t${300 + (index % 700)}`).join('\n')
    const stall = await longestStall(async () => {
      await paste(block)
      await popup.wait(/5,?000 points/)
    })
    expect(stall).toBeLessThan(2000)
    expect(await popup.value('textbox', pressure(1))).toBe('-10')
    expect(await popup.text()).not.toMatch(/NaN|Infinity|undefined/)
    await popup.type('textbox', flow(1), '777')
    expect(await popup.value('textbox', flow(1))).toBe('777')
  })

  it('meets a paste of 10 MB with a sentence and goes on', async () => {
    await popup.type('textbox', pressure(1), '-50')
    await popup.click('textbox', flow(1))
    const stall = await longestStall(() => paste('lorem ipsum 12 '.repeat(700_000)))
    expect(stall).toBeLessThan(2000)
    expect(await popup.finding()).toMatch(/\.$/)
    expect(await popup.value('textbox', pressure(1))).toBe('-50')
    await popup.type('textbox', flow(1), '790')
    await popup.wait(/CFM50/)
  })
})
