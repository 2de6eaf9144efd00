import type { Control } from '../../page/controls.ts'
import { dateBoxes, partNumber, partText } from '../date-parts.ts'
import { choose } from '../../choose.ts'
import { writeCombobox } from '../combobox/write.ts'
import { noOption } from '../writing/reasons.ts'
import { writeSelect } from '../select/write.ts'
import { typeInto } from '../writing/type.ts'
import { say } from '../../../words/say.ts'

const names = (at: number) => new Date(Date.UTC(2000, at - 1, 1))
const monthName = (at: number, month: 'long' | 'short') =>
  names(at).toLocaleDateString('en', { month, timeZone: 'UTC' })

/** Writes the day, the month and the year of one date into a box each, in the page's order. */
export async function writeDateBoxes(control: Control, text: string): Promise<string | undefined> {
  const date = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  const boxes = dateBoxes(control)
  if (!date && text !== '') return say`“${text}” is not a date as year-month-day`
  for (const { part, element } of boxes) {
    const number = date ? Number(date[part === 'y' ? 1 : part === 'M' ? 2 : 3]) : undefined
    if (partNumber(partText(element)) === number) continue
    const one: Control = { ...control, kind: 'select', element, elements: [element] }
    const padded = number === undefined ? '' : String(number).padStart(2, '0')
    let reason: string | undefined
    if (element.localName === 'select') {
      const options = [...(element as HTMLSelectElement).options].map(({ label }) => label.trim())
      const others = part === 'M' && number ? [monthName(number, 'long'), monthName(number, 'short')] : []
      const option = number === undefined ? options[0] : choose(String(number), [padded, ...others], options)
      reason = option === undefined ? noOption(padded) : writeSelect(one, option)
    } else if (element.getAttribute('role') === 'combobox') {
      reason = await writeCombobox(
        { ...one, kind: 'combobox' },
        part === 'M' && number ? monthName(number, 'long') : String(number ?? ''),
      )
    } else {
      const input = element as HTMLInputElement
      const short = input.maxLength === 2 && part === 'y' ? padded.slice(-2) : padded
      await typeInto(input, input.type === 'number' && number !== undefined ? String(number) : short)
    }
    if (reason) return reason
  }
  return undefined
}
