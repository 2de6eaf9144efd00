/** Fields of the page around the widget: some are read, others take figures. */
import type { Control } from '../form/controls.ts'
import { sameness } from '../form/same.ts'
import { writeNumber } from '../form/write/number.ts'
import { writeText } from '../form/write/text.ts'
import type { Report } from '../reduce/report.ts'
import type { Entered, Prefill, Sources, Targets } from './types.ts'
import { writtenFigure } from './written.ts'
import { say } from '../words/say.ts'

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

const isField = (element: Element): element is Field => /^(input|textarea|select)$/.test(element.localName)

/** All elements for a selector, in the widget's own tree first. A selector that cannot be read finds nothing. */
function find(widget: HTMLElement, selector: string): Field[] {
  const roots = [widget.getRootNode() as ParentNode & Node, widget.ownerDocument]
  for (const root of roots) {
    try {
      const found = [...root.querySelectorAll(selector)].filter(isField)
      if (found.length > 0) return found
    } catch {
      console.error(say`gapsum-widget: “${selector}” is not a selector.`)
    }
  }
  return []
}

/** What the host's fields hold for the inputs that are read from them. */
export function readSources(widget: HTMLElement, sources: Sources): Prefill {
  const found: Record<string, string> = {}
  for (const [input, given] of Object.entries(sources)) {
    const { selector, unit } = typeof given === 'string' ? { selector: given, unit: '' } : given
    const [field] = find(widget, selector)
    if (field) found[input] = field.value.trim() === '' || unit === '' ? field.value : `${field.value} ${unit}`
  }
  return found
}

/** Text-like inputs; passwords and the like are never written. */
const typable = /^(text|search|tel|number|)$/

async function enter(field: Field, text: string): Promise<string | undefined> {
  if (field.localName === 'select' || (field.localName === 'input' && !typable.test(field.type)))
    return say`is no field for text or numbers`
  if (field.matches(':disabled')) return say`is disabled by the page`
  if ((field as HTMLInputElement).readOnly) return say`can only be read`
  const control = { element: field } as unknown as Control
  return field.type === 'number' ? writeNumber(control, text) : writeText(control, text)
}

/** Writes figures into the host's fields and reads them back. A figure that is not there empties its field. */
export async function writeTargets(
  widget: HTMLElement,
  targets: Targets,
  report: Report | undefined,
): Promise<Entered[]> {
  const lines: Entered[] = []
  const focused = (widget.getRootNode() as Document | ShadowRoot).activeElement
  let moved = false
  for (const [figure, given] of Object.entries(targets)) {
    const format = typeof given === 'string' ? { selector: given } : given
    const intended = writtenFigure(report, figure, format) ?? ''
    const [field, second] = find(widget, format.selector)
    const line = { figure, selector: format.selector, intended, readBack: field?.value ?? '', reason: '' }
    if (!field) lines.push({ ...line, outcome: 'not found', reason: say`no field fits the selector` })
    else if (second) lines.push({ ...line, outcome: 'ambiguous', reason: say`several fields fit the selector` })
    else if (field.value === intended) lines.push({ ...line, outcome: 'entered' })
    else {
      const reason = await enter(field, intended)
      moved ||= reason === undefined
      const readBack = field.value
      const right = sameness(readBack, intended) !== 'different'
      lines.push({
        ...line,
        readBack,
        reason: reason ?? '',
        outcome: reason !== undefined ? 'refused' : right ? 'entered' : 'differs',
      })
    }
  }
  // Typing into a field takes the focus there; the person is still where they were.
  if (moved && focused instanceof HTMLElement && focused !== widget.ownerDocument.body)
    focused.focus({ preventScroll: true })
  return lines
}
