import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session } from './harness.ts'
import { bookLines, confirm, formOf, modelOf, round, submissions } from './round.ts'

let site: Site
let session: Session

beforeAll(async () => {
  site = await startSite()
  session = await launch()
})
afterAll(async () => {
  await session.close()
  await site.close()
})

describe.each(['plain', 'react'] as const)('the whole job on the %s form', (id) => {
  it('enters what was planned and no more, keeps it in the book, submits nothing, and puts it back', async () => {
    const form = formOf(site, id)
    const { problems, lines, page, ui, before } = await round(session, site, form)
    expect(problems).toEqual([])
    expect(lines.length).toBe(form.answers.length)
    expect(lines.length).toBeGreaterThanOrEqual(12)
    const kinds = new Set(form.sections.flatMap(({ fields }) => fields.map(({ kind }) => kind)))
    expect([...kinds]).toEqual(
      expect.arrayContaining(['text', 'number', 'date', 'select', 'radio', 'checkbox', 'textarea']),
    )

    await ui.click('button', 'Put back what was there')
    await ui.wait(/Nothing is typed until you confirm/)
    expect(await modelOf(page), 'before the undo is confirmed').not.toEqual(before)
    await confirm(ui)
    const after = await modelOf(page)
    // A group of radios has no way back to none for a person either.
    const radios = form.sections.flatMap(({ fields }) => fields.filter(({ kind }) => kind === 'radio'))
    const chosen = Object.fromEntries(radios.map(({ name }) => [name, after[name]]))
    expect(after).toEqual({ ...before, ...chosen })

    await ui.click('button', 'Open book')
    const { book } = await bookLines(session)
    expect(await book.text()).toMatch(/puts back what changed in/)
    await book.page.close()
    expect(await submissions(page)).toBe(0)
    expect(site.requests.filter(({ method }) => method !== 'GET')).toEqual([])
    await page.close()
  })
})
