/** Fields of the page around the widget: some are read, others take figures. */
import { sameness } from '../form/same.ts'
import { pause } from '../form/kinds/writing/wait.ts'
import { writeWithoutFocus } from '../form/kinds/writing/without-focus.ts'
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

function enter(field: Field, text: string): string | undefined {
  if (field.localName === 'select' || (field.localName === 'input' && !typable.test(field.type)))
    return say`is no field for text or numbers`
  if (field.matches(':disabled')) return say`is disabled by the page`
  const typed = field as HTMLInputElement | HTMLTextAreaElement
  return typed.readOnly ? say`can only be read` : writeWithoutFocus(typed, text)
}

/** Writes figures into the host's fields, all at once, and reads them back. A figure that is not there empties its field. */
export async function writeTargets(
  widget: HTMLElement,
  targets: Targets,
  report: Report | undefined,
): Promise<Entered[]> {
  const written = Object.entries(targets).map(([figure, given]) => {
    const format = typeof given === 'string' ? { selector: given } : given
    const intended = writtenFigure(report, figure, format) ?? ''
    const [field, second] = find(widget, format.selector)
    const reason = field && !second && field.value !== intended ? enter(field, intended) : undefined
    return { figure, selector: format.selector, intended, field, second, reason }
  })
  // A page may answer an entry a moment later.
  await pause(0)
  return written.map(({ figure, selector, intended, field, second, reason = '' }): Entered => {
    const readBack = field?.value ?? ''
    const line = (outcome: Entered['outcome'], why: string): Entered => {
      return { figure, selector, intended, readBack, outcome, reason: why }
    }
    if (!field) return line('not found', say`no field fits the selector`)
    if (second) return line('ambiguous', say`several fields fit the selector`)
    if (reason !== '') return line('refused', reason)
    return line(sameness(readBack, intended) === 'different' ? 'differs' : 'entered', '')
  })
}
