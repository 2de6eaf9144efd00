/** What controls say of themselves to where they cannot be looked at: the dock, or the page around a frame. */
import { cluesOf, optionsOf } from '../../form/page/clues.ts'
import type { Control } from '../../form/page/controls.ts'
import type { PageImage } from '../../messages/dock-messages.ts'
import type { Image } from '../../form/page/image.ts'
import { complaint, empty, shown } from '../../form/fill/read.ts'
import { keyOf } from './control-key.ts'

const told = [
  'type',
  'step',
  'min',
  'max',
  'maxlength',
  'pattern',
  'placeholder',
  'title',
  'autocomplete',
  'lang',
  'inputmode',
]

export function imageOf(control: Control): Image {
  return {
    key: keyOf(control.element),
    clues: cluesOf(control),
    shown: shown(control),
    empty: empty(control),
    complaint: complaint(control),
    attributes: told.flatMap((name): [string, string][] => {
      const value = control.element.getAttribute(name)
      return value === null ? [] : [[name, value]]
    }),
  }
}

/** More options than the clues by which a control is found again: a list of states is longer. */
const manyOptions = 300

/** A control for the dock, whatever it holds left out: while mapping nobody needs to know. */
export function pageImageOf(control: Control): PageImage {
  const { element } = control
  const image = imageOf(control)
  const language = element.closest('[lang]')?.getAttribute('lang') ?? element.ownerDocument.documentElement.lang
  return {
    ...image,
    shown: '',
    complaint: '',
    clues: { ...image.clues, options: optionsOf(control).slice(0, manyOptions) },
    attributes: [...image.attributes.filter(([name]) => name !== 'lang'), ['lang', language]],
    element: element.localName,
    ...(control.parts && { parts: control.parts.map(pageImageOf) }),
  }
}
