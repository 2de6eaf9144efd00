/** The other tests of a tester's month, each set up and typed by mouse and keys in one browser, and looked at in states. */
import { afterAll, beforeAll, expect, it as test } from 'vitest'
import { launch, type Session } from './harness.ts'
import { pastePoints } from './paste-points.ts'
import { sweep } from './sweep.ts'

let session: Session
beforeAll(async () => {
  session = await launch()
})
afterAll(() => session.close())

test('several fans at once: two choices, a pasted table, and the sum', async () => {
  const view = await session.openPage('/popup.html')
  await view.page.setViewport({ width: 420, height: 600 })
  await view.click('button', 'Start a job')
  await view.wait(/Before the first reading/)
  await view.page.click('#setup > summary')
  await view.choose('Typed for each point', 'several fans at once')
  await view.wait(/fan 1[\s\S]*fan 2/)
  await view.type('textbox', /^House pressure, point 1/, '-50')
  await view.type('textbox', /^Flow, point 1, fan 1/, '500')
  await view.type('textbox', /^Flow, point 1, fan 2/, '300')
  await view.wait(/CFM50[\s\S]*800/)
  await pastePoints(view.page, ['Pa\tfan 1\tfan 2', '-50\t520\t310', '-40\t450\toff'])
  await view.wait(/2 points pasted/)
  await view.wait(/CFM50[\s\S]*830/)
  expect(await sweep(view.page)).toEqual([])
})

test('a large building: one choice, led by the result at 75 Pa', async () => {
  const view = await session.openPage('/popup.html')
  await view.page.setViewport({ width: 420, height: 600 })
  await view.click('button', /^\+ house|^Next house/)
  await view.wait(/Before the first reading/)
  await view.choose('Procedure', /^ASTM E3158/)
  await view.choose('Typed for each point', 'the flow it shows')
  await pastePoints(view.page, ['-25\t5151', '-35\t6346', '-45\t7416', '-55\t8398', '-65\t9314', '-75\t10178'])
  await view.wait(/cfm at 75 Pa/)
  expect(await sweep(view.page)).toEqual([])
})
