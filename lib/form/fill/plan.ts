/** What would be typed where, before anything is. */
import { cluesOf } from '../page/clues.ts'
import { survey, type Control, type Survey } from '../page/controls.ts'
import { contentOf, whyNoFile, type FileContent } from './file.ts'
import { findAll, type Found } from '../map/find.ts'
import { itemOf } from '../item-of.ts'
import type { Material } from '../material.ts'
import { inOwnNotation, notationOf } from './notation.ts'
import { readDate } from '../dates.ts'
import { behind, empty, shown } from './read.ts'
import { alikeIn } from './same-entry.ts'
import { constraint } from '../page/constraint.ts'
import type { Binding, FormMap, PlanLine } from '../schema.ts'
import { asksAlike } from '../words.ts'
import { bindingsHere, type Steps } from '../map/steps.ts'
import { sourceWords, textOf } from './text.ts'
import { say } from '../../words/say.ts'

export interface Plan {
  document: Document
  bindings: Binding[]
  lines: PlanLine[]
  /** Which control each binding goes into, for those that were found or picked by the person. */
  targets: Map<string, Control>
  /**
   * The controls that fit equally well, in document order, for those that are ambiguous; the nearest, for those that are
   * not found: only the person takes one of them.
   */
  candidates: Map<string, Control[]>
  /** Names of the ticks, signatures and files that only the person gives. */
  leftToYou: string[]
  /** For a form in several steps: which one the page shows. `lines` holds that step only. */
  steps?: Steps
  /** Files to put in, by binding. */
  files?: Map<string, FileContent>
  /** What the texts come from; absent when putting back. */
  material?: Material
  /** Whether the text replaces what stands there, also in kinds that a fill only adds to: when putting back. */
  exact?: true
}

function fill(line: PlanLine, binding: Binding, material: Material, control: Control): PlanLine {
  const { source } = binding
  const clues = cluesOf(control)
  // A list that holds nothing but its prompt gets its options later: the ones seen when mapping stand for them.
  const awaited = control.kind === 'select' && clues.options.length < 2 && binding.control.options.length > 1
  const text = textOf(source, material, awaited ? { ...clues, options: binding.control.options } : clues)
  const now = shown(control)
  const placed = { ...line, control: control.name, section: control.section, now }
  if ('refused' in text) return { ...placed, state: 'refused', note: text.refused }
  const was = binding.control.name
  const renamed = asksAlike(was, control.name) < 0.9 ? say`was “${was}” when it was mapped` : ''
  const base = { ...placed, text: text.text, note: [text.note, renamed].filter(Boolean).join('; ') }
  const limit = (control.element as HTMLInputElement).maxLength ?? -1
  if ((control.kind === 'text' || control.kind === 'textarea') && limit >= 0 && text.text.length > limit)
    return { ...base, state: 'refused', note: say`The control takes ${limit} characters at most: shorten the text.` }
  if (control.kind !== 'file' && sameEntry(now, text.text, binding, material, control))
    return { ...base, state: 'already there' }
  const notes = [
    base.note,
    warning(control, text.text),
    awaited && say`the list is still empty; looked for again during the fill`,
  ]
    .filter(Boolean)
    .join('; ')
  return { ...base, state: empty(control) ? 'to enter' : 'will replace', note: notes }
}

/** Numbers are compared as numbers, dates as dates, everything else to the letter. */
function sameEntry(now: string, text: string, { source }: Binding, material: Material, control: Control): boolean {
  const same = alikeIn(control.kind, text, now)
  if (same === 'same' || same === 'in other words') return (behind(control) ?? now) === now
  if (source.from !== 'item') return false
  const kind = itemOf(material, source.item)?.kind
  if (kind === 'quantity') return inOwnNotation(text, now, notationOf(control, source, material))
  const pattern = source.write.date
  const date = pattern === undefined ? undefined : readDate(text, pattern)
  return pattern !== undefined && date !== undefined && readDate(now, pattern) === date
}

function warning(control: Control, text: string): string {
  const input = control.element as HTMLInputElement
  const warned = constraint(control, text)
  if (warned) return warned
  if (control.elements.some((each) => /submit\s*\(|__doPostBack/.test(each.getAttribute('onchange') ?? '')))
    return say`the page reloads itself when this changes`
  if (control.kind === 'text' && input.matches('[aria-autocomplete=list], [aria-haspopup=listbox]'))
    return say`the control opens a list of its own: check that the page took the text`
  return ''
}

function lineOf(binding: Binding, material: Material, found: Found): PlanLine {
  const line: PlanLine = {
    binding: binding.id,
    control: binding.control.name,
    section: binding.control.section,
    source: sourceWords(binding.source, material),
    text: '',
    now: '',
    state: 'not found',
    note: '',
  }
  if ('found' in found) return fill(line, binding, material, found.found)
  const text = textOf(binding.source, material, binding.control)
  // What cannot be written is never looked for again, whether or not its control turns up.
  if ('refused' in text) return { ...line, state: 'refused', note: text.refused }
  line.text = text.text
  line.note = text.note ?? ''
  if ('ambiguous' in found) {
    const count = found.ambiguous.length
    const first = found.ambiguous[0]
    return {
      ...line,
      now: first ? shown(first) : '',
      state: 'ambiguous',
      note:
        count > 1 ? say`${count} controls fit equally well: say which` : say`another binding claims the same control`,
    }
  }
  const note =
    found.nearest.length > 0
      ? say`not on the page under this name: is it one of these?`
      : say`looked for again during the fill`
  return { ...line, note: [line.note, note].filter(Boolean).join('; ') }
}

/** @param seen what a look at the page has just found */
export function plan(
  map: Pick<FormMap, 'bindings'>,
  material: Material,
  document: Document,
  seen: Survey = survey(document),
): Plan {
  const { controls, leftOut } = seen
  const answers = findAll(map.bindings, controls)
  const targets = new Map<string, Control>()
  const candidates = new Map<string, Control[]>()
  const { here, steps } = bindingsHere(map.bindings, answers)
  const lines = here.map((binding) => {
    const found = answers.get(binding.id) ?? { notFound: true as const, nearest: [] }
    if ('found' in found) targets.set(binding.id, found.found)
    if ('ambiguous' in found) candidates.set(binding.id, found.ambiguous)
    if ('notFound' in found && found.nearest.length > 0) candidates.set(binding.id, found.nearest)
    return lineOf(binding, material, found)
  })
  const leftToYou = leftOut.filter(({ reason }) => reason === 'left to you').map(({ name, section }) => name || section)
  const files = new Map(
    map.bindings.flatMap(({ id, source }) =>
      source.from === 'file' && !whyNoFile(source, material) ? [[id, contentOf(source, material)] as const] : [],
    ),
  )
  return {
    document,
    bindings: [...map.bindings],
    material,
    lines,
    targets,
    candidates,
    leftToYou,
    files,
    ...(steps && { steps }),
  }
}

/** The form map in which a binding that was not found goes into the control that the person says it is by now. */
export const movedTo = <Map extends Pick<FormMap, 'bindings'>>(map: Map, bindingId: string, control: Control): Map => ({
  ...map,
  bindings: map.bindings.map((each) => (each.id === bindingId ? { ...each, control: cluesOf(control) } : each)),
})

/** The same plan with one ambiguous binding settled by the person: the control they pointed at. */
export function pick(before: Plan, bindingId: string, control: Control, material: Material): Plan {
  const found: Found = { found: control }
  return {
    ...before,
    targets: new Map([...before.targets, [bindingId, control]]),
    lines: before.lines.map((line) => {
      const binding = before.bindings.find(({ id }) => id === line.binding)
      return line.binding === bindingId && binding ? lineOf(binding, material, found) : line
    }),
  }
}
