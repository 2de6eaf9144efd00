/** The whole job in a real Firefox: the toolbar's own button, a real grant of the active tab, the same steps as in Chromium. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launchFirefox, type FirefoxSession } from './firefox.ts'
import { formOf, modelOf, round, submissions, confirm, bookLines } from './round.ts'

let site: Site
let session: FirefoxSession

beforeAll(async () => {
  site = await startSite()
  session = await launchFirefox()
})
afterAll(async () => {
  await session.close()
  await site.close()
})

describe.each(['plain', 'react'] as const)('the whole job in Firefox on the %s form', (id) => {
  it('enters what was planned and no more, keeps it in the book, submits nothing, and puts it back', async () => {
    const form = formOf(site, id)
    const { problems, lines, page, ui, before } = await round(session, site, form)
    expect(problems).toEqual([])
    expect(lines.length).toBe(form.answers.length)

    await ui.click('button', 'Put back what was there')
    await ui.wait(/Nothing is typed until you confirm/)
    await confirm(ui)
    const after = await modelOf(page)
    const radios = form.sections.flatMap(({ fields }) => fields.filter(({ kind }) => kind === 'radio'))
    expect(after).toEqual({ ...before, ...Object.fromEntries(radios.map(({ name }) => [name, after[name]])) })

    await ui.click('button', 'Open book')
    const { book } = await bookLines(session)
    expect(await book.text()).toMatch(/puts back what changed in/)
    await book.close()
    expect(await submissions(page)).toBe(0)
    expect(site.requests.filter(({ method }) => method !== 'GET')).toEqual([])
    await page.close()
  })
})
