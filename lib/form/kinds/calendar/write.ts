/** Calendars that take no typing: opened, turned to the month, the day clicked. */
import type { Control } from '../../page/controls.ts'
import { faceOf } from '../../page/face.ts'
import { months } from '../date-parts.ts'
import { readAnyDate } from './read.ts'
import { flatAll, flatText } from '../../page/flat.ts'
import { hiddenBecause } from '../../page/visible.ts'
import { tidy } from '../../words.ts'
import { enter, leave } from '../writing/events.ts'
import { watchPopup } from '../writing/popup.ts'
import { press, strike } from '../writing/press.ts'
import { byHand } from '../writing/reasons.ts'
import { pause, until } from '../writing/wait.ts'
import { say } from '../../../words/say.ts'

const labelOf = (element: Element) =>
  tidy(element.getAttribute('aria-label') ?? '') ||
  tidy(element.getAttribute('title') ?? '') ||
  tidy(element.textContent ?? '') ||
  // Drawn as an arrow: the page's own word for it.
  tidy((element.getAttribute('class') ?? '').replaceAll(/[-_]/g, ' '))

/** Months since year 0 that the calendar shows, from its heading. */
function monthShown(calendar: Element): number | undefined {
  // Some let the month and the year be chosen or typed.
  const fields = flatAll<HTMLInputElement | HTMLSelectElement>(calendar, 'select, input').filter(
    (each) => !hiddenBecause(each),
  )
  const held = fields.map((each) => ('selectedOptions' in each ? (each.selectedOptions[0]?.label ?? '') : each.value))
  const text = tidy(`${held.join(' ')} ${flatText(calendar)}`)
  const month = new RegExp(String.raw`\b(${months.join('|')})[a-z]*\.?\b`, 'i').exec(text)
  const year = /\b(19|20|21)\d{2}\b/.exec(text)
  if (!month || !year) return undefined
  return Number(year[0]) * 12 + months.indexOf((month[1] ?? '').toLowerCase())
}

function turner(calendar: Element, forward: boolean): HTMLElement | undefined {
  const wanted = forward ? /\bnext\b|\bforward\b|\blater\b|^[›>→]$/i : /\bprev(ious)?\b|\bback\b|\bearlier\b|^[‹<←]$/i
  const named = flatAll(calendar, 'button, [role=button], a, [class*=next], [class*=prev]')
  const buttons = named.filter(
    (each) => wanted.test(labelOf(each)) && !/\byear\b|\bdecade\b/i.test(labelOf(each)) && !hiddenBecause(each),
  )
  return buttons.find((each) => /\bmonth\b/i.test(labelOf(each))) ?? buttons[0]
}

const inside = (cell: Element): Element[] => [cell, ...flatAll(cell, '*')]

const dayOf = (cell: Element): string => tidy(flatText(cell))

/** The cell of a day: by the date that it carries, else by counting from the first of the month. */
function dayCell(calendar: Element, iso: string): HTMLElement | undefined {
  const cells = flatAll(calendar, '[role=gridcell], td, button[data-date], [aria-label]').filter(
    (each) => !hiddenBecause(each),
  )
  const carries = cells.find((cell) =>
    inside(cell).some((each) =>
      ['data-date', 'data-iso', 'data-day', 'datetime', 'aria-label', 'title'].some(
        (name) => readAnyDate(each.getAttribute(name) ?? '') === iso,
      ),
    ),
  )
  if (carries) return carries
  const days = cells.filter((cell) => /^\d{1,2}$/.test(dayOf(cell)))
  const first = days.findIndex((cell) => dayOf(cell) === '1')
  const day = Number(iso.slice(8))
  const cell = days[first + day - 1]
  return first >= 0 && cell && Number(dayOf(cell)) === day ? cell : undefined
}

export async function writeCalendar({ element }: Control, text: string): Promise<string | undefined> {
  const date = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  if (!date) return text === '' ? say`a calendar is emptied by hand` : say`“${text}” is not a date as year-month-day`
  const wanted = Number(date[1]) * 12 + Number(date[2]) - 1
  const watch = watchPopup(element)
  const find = () => watch.opened().find((each) => monthShown(each) !== undefined)
  try {
    enter(element)
    if (!(await until(find, 100))) press(faceOf(element) ?? element)
    if (!(await until(find, 800))) return say`opens no calendar that can be read; ${byHand}`
    for (let count = 0; count < 600; count++) {
      const calendar = find()
      const shown = calendar && monthShown(calendar)
      if (!calendar || shown === undefined) return byHand
      if (shown === wanted) break
      const button = turner(calendar, shown < wanted)
      if (!button || button.matches(':disabled, [aria-disabled=true]'))
        return say`the calendar does not go to ${text.slice(0, 7)}`
      press(button)
      if (
        !(await until(
          () => {
            const now = find()
            return now && monthShown(now) !== shown
          },
          500,
          10,
        ))
      )
        return byHand
    }
    await pause(30)
    const calendar = find()
    const cell = calendar && dayCell(calendar, text)
    if (!cell) return byHand
    if (cell.matches('[aria-disabled=true], :disabled') || flatAll(cell, ':disabled')[0])
      return say`the calendar does not offer ${text}`
    press(flatAll(cell, 'button, [role=button], [tabindex]')[0] ?? cell)
    await pause(50)
    return undefined
  } finally {
    if (find()) strike(element, 'Escape')
    leave(element)
    watch.stop()
  }
}
