import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session, type Surface } from './harness.ts'

let site: Site
let session: Session
let popup: Surface

async function open(): Promise<void> {
  site = await startSite()
  session = await launch()
  popup = await session.openPopup(await session.open(site.plain))
  await popup.click('button', 'Start a job')
  await popup.get('textbox', 'House pressure, point 1, Pa')
}

async function close(): Promise<void> {
  await session.close()
  await site.close()
}

const pressure = (point: number) => `House pressure, point ${point}, Pa`
const flow = (point: number) => `Flow, point ${point}, cfm`

/** Pastes as the browser would, so many times the text, into the cell that has the focus. */
async function paste(text: string, times = 1): Promise<void> {
  await popup.page.evaluate(
    (unit, count) => {
      const clipboardData = new DataTransfer()
      clipboardData.setData('text/plain', unit.repeat(count))
      const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true })
      document.activeElement?.dispatchEvent(event)
    },
    text,
    times,
  )
}

/**
 * Milliseconds of processor time that the popup's own thread took for `work`. The clock on the wall would measure what
 * else this machine is busy with.
 */
async function busy(work: () => Promise<void>): Promise<number> {
  const watch = await popup.page.createCDPSession()
  await watch.send('Performance.enable', { timeDomain: 'threadTicks' })
  const spent = async (): Promise<number> => {
    const { metrics } = await watch.send('Performance.getMetrics')
    const task = metrics.find(({ name }) => name === 'TaskDuration')
    if (task === undefined) throw new Error('The browser tells no TaskDuration.')
    return task.value * 1000
  }
  const before = await spent()
  await work()
  return (await spent()) - before
}

describe('cells that cannot be right', () => {
  beforeAll(open)
  afterAll(close)

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
  beforeEach(open)
  afterEach(close)

  it('takes 5,000 points without standing still', async () => {
    await popup.click('textbox', pressure(1))
    const block = Array.from({ length: 5000 }, (_, index) => `-${10 + (index % 50)}\t${300 + (index % 700)}`).join('\n')
    const took = await busy(async () => {
      await paste(block)
      await popup.wait(/5,?000 points/)
    })
    expect(took).toBeLessThan(2000)
    expect(await popup.value('textbox', pressure(1))).toBe('-10')
    expect(await popup.text()).not.toMatch(/NaN|Infinity|undefined/)
    await popup.type('textbox', flow(1), '777')
    expect(await popup.value('textbox', flow(1))).toBe('777')
  })

  it('meets a paste of 10 MB with a sentence and goes on', async () => {
    await popup.type('textbox', pressure(1), '-50')
    await popup.click('textbox', flow(1))
    const took = await busy(() => paste('lorem ipsum 12 ', 700_000))
    expect(took).toBeLessThan(2000)
    expect(await popup.finding()).toMatch(/\.$/)
    expect(await popup.value('textbox', pressure(1))).toBe('-50')
    await popup.type('textbox', flow(1), '790')
    await popup.wait(/CFM50/)
  })
})
