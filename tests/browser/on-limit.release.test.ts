/**
 * Readings that stand exactly on a limit, or a hundredth beside it, through the popup and the widget: the verdict is that
 * of the fraction. 60 × flow / volume and 100 × flow / area are worked out by hand beside each case.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Browser } from 'puppeteer-core'
import { besideSite } from './beside-site.ts'
import type { Surface } from './surface.ts'
import { open, visit, withWidget } from './widget-pages.ts'

interface Case {
  flow: string
  size: string
  limit: string
  meets: boolean
}

/** Air changes at 50 Pa. */
const houses: Case[] = [
  { flow: '860', size: '17200', limit: 'iecc-2018-air-changes-zones-3-8', meets: true }, // 51,600 / 17,200 = 3
  { flow: '860.01', size: '17200', limit: 'iecc-2018-air-changes-zones-3-8', meets: false },
  { flow: '1000', size: '20000', limit: 'iecc-2021-air-changes-prescriptive-zones-3-8', meets: true }, // 60,000 / 20,000 = 3
  { flow: '1433.33', size: '17200', limit: 'iecc-2018-air-changes-zones-1-2', meets: true }, // 4.99999, at most 5
  { flow: '1433.34', size: '17200', limit: 'iecc-2018-air-changes-zones-1-2', meets: false }, // 5.00002
  { flow: '3500', size: '30000', limit: 'iecc-2009-air-changes', meets: false }, // 210,000 / 30,000 = 7, less than 7
  { flow: '3499.99', size: '30000', limit: 'iecc-2009-air-changes', meets: true },
]

/** At 25 Pa per 100 square feet. */
const ducts: Case[] = [
  { flow: '80', size: '2000', limit: 'iecc-2021-ducts-total', meets: true }, // 8,000 / 2,000 = 4
  { flow: '80.01', size: '2000', limit: 'iecc-2021-ducts-total', meets: false },
  { flow: '86', size: '2150', limit: 'iecc-2018-ducts-total', meets: true }, // 8,600 / 2,150 = 4
]

async function openSection({ page }: Surface, id: string): Promise<void> {
  await page.waitForSelector(`#${id} > summary`)
  if (!(await page.$eval(`#${id}`, (section) => section.hasAttribute('open')))) await page.click(`#${id} > summary`)
}

const spoilt = /\d\.\d{6,}/

/** What the popup says of the verdict once it says anything of this flow. */
async function judged(popup: Surface, { flow, meets }: Case): Promise<string> {
  await popup.type('textbox', /^Flow, point 1/, flow)
  return popup.wait(meets ? /Meets the limit/ : /Does not meet the limit/)
}

function fits(text: string, { meets }: Case): void {
  expect(text).not.toMatch(meets ? /Does not meet the limit/ : /Meets the limit/)
  expect(text).not.toMatch(spoilt)
}

describe('in the popup', () => {
  const at = besideSite()

  // oxlint-disable-next-line vitest/expect-expect -- fits expects
  test('ten of them', async () => {
    const popup = await at.session.openPopup(await at.session.open(at.site.plain))
    await popup.click('button', 'Start a job')
    await popup.type('textbox', /^House pressure, point 1/, '-50')
    await popup.click('button', /^Job/)
    await openSection(popup, 'building')
    await openSection(popup, 'setup')
    for (const one of houses) {
      await popup.type('textbox', /^Volume/, one.size)
      await popup.page.select('#limit', one.limit)
      fits(await judged(popup, one), one)
    }
    await popup.choose('Test of', 'ducts')
    await popup.choose('Direction', 'pressurize')
    await popup.choose('Stage', 'final')
    await popup.type('textbox', /point 1, Pa$/, '25')
    for (const one of ducts) {
      await popup.type('textbox', /^Conditioned floor area/, one.size)
      await popup.page.select('#limit', one.limit)
      fits(await judged(popup, one), one)
    }
  })
})

describe('in the widget', () => {
  const at = besideSite()
  let browser: Browser
  beforeAll(async () => {
    browser = await open('chromium')
  })
  afterAll(() => browser?.close())

  test('ten of them', async () => {
    const { page } = await visit(browser, at.site.widget.spanish)
    for (const { flow, size, limit, meets } of [...houses, ...ducts]) {
      const subject = ducts.some((one) => one.limit === limit) ? 'ducts' : 'enclosure'
      const found = await withWidget(
        page,
        async (widget, given) => {
          const pressure = given.subject === 'ducts' ? '25' : '50'
          widget.value = {
            subject: given.subject as 'ducts',
            procedure: 'one-point',
            direction: given.subject === 'ducts' ? 'pressurize' : 'depressurize',
            stage: 'final',
            limit: given.limit,
            points: [{ pressure, flow: given.flow, devicePressure: '', range: '' }],
            ...(given.subject === 'ducts' ? { floorArea: given.size } : { volume: given.size }),
          }
          await new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
          return { meets: widget.verdict?.meets, text: widget.shadowRoot?.textContent ?? '' }
        },
        { flow, size, limit, subject },
      )
      expect({ flow, meets: found.meets }).toEqual({ flow, meets })
      expect(found.text).not.toMatch(spoilt)
    }
  })
})
