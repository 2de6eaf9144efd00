/** From a fill of the page to the saved file: written, read back from its own bytes, and named for the entry. */
import type { FiledDocument } from '../../book/schema.ts'
import { sha256 } from '../../book/sha256.ts'
import type { Plan } from '../../form/fill/plan.ts'
import type { ReceiptLine } from '../../form/schema.ts'
import type { Opened, Opening } from '../../pdf/open.ts'
import { saveForm, type Saved, type SavedField } from '../../pdf/save.ts'
import { say } from '../../words/say.ts'
import type { Filed } from '../helper/filed.ts'
import { wording } from '../parts/wording.ts'
import { shownOf, type Held } from './values.ts'

const safe = (text: string): string =>
  text
    .replaceAll(/[\p{Cc}<>:"/\\|?*]+/gu, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim()

/** `<name>, <job>.pdf`, without what file systems refuse. */
export function nameFor(file: string, job: string): string {
  const base = safe(file.replace(/\.pdf$/i, '')).slice(0, 80) || say`form`
  const last = safe(job).slice(0, 60).replace(/\.+$/, '')
  return last ? `${base}, ${last}.pdf` : `${base}, ${say`filled`}.pdf`
}

export interface Open {
  opened: Opened
  held: Held
  /** The name of the file that was opened. */
  file: string
}

export interface Ready extends Saved {
  name: string
  document: FiledDocument
  /** What the fields held when it was made. */
  made: string
}

/** What the fields hold, to tell whether a file was made of it. */
export const stateOf = (held: Held): string => JSON.stringify([...held.all])

const facts = async (of: Uint8Array, name: string) => ({
  name,
  size: of.length,
  sha256: await sha256(of as Uint8Array<ArrayBuffer>),
})

/**
 * Makes the file and reads it back.
 * @throws NotOpened in words, when it cannot be written or read
 */
export async function makeFile({ opened, held, file }: Open, job: string, opening: Opening): Promise<Ready> {
  const made = stateOf(held)
  const saved = await saveForm(opened, held.all, opening)
  const name = nameFor(file, job)
  return {
    ...saved,
    name,
    made,
    document: { empty: await facts(opened.bytes, file), filled: await facts(saved.bytes, name) },
  }
}

/** A line as the saved file holds it. */
function asSaved(
  line: ReceiptLine,
  name: string,
  { opened, fields }: { opened: Opened; fields: ReadonlyMap<string, SavedField> },
) {
  const field = opened.fields.find((each) => each.name === name)
  const saved = fields.get(name)
  if (!field || !saved || line.outcome !== 'entered') return line
  const options = opened.called.get(name)?.options ?? []
  if (saved.held !== saved.wanted) {
    const readBack = shownOf(field, options, saved.held)
    return { ...line, outcome: 'differs' as const, readBack, note: say`the saved file holds “${readBack}”` }
  }
  return saved.drawn === '' ? line : { ...line, outcome: 'differs' as const, note: saved.drawn }
}

/** What is done at the end of each fill of the page. */
export function filer(
  open: () => Open | undefined,
  opening: () => Opening,
  job: () => string,
  onReady: (ready: Ready) => void,
): (lines: readonly ReceiptLine[], plan: Plan) => Promise<Filed> {
  return async (lines, plan) => {
    const form = open()
    if (!form) return { lines: [...lines], problem: '' }
    try {
      const ready = await makeFile(form, job(), opening())
      onReady(ready)
      const fields = new Map(ready.fields.map((field) => [field.name, field]))
      const nameOf = (binding: string) =>
        (plan.targets.get(binding)?.element as HTMLInputElement | undefined)?.name ?? ''
      return {
        lines: lines.map((line) => asSaved(line, nameOf(line.binding), { opened: form.opened, fields })),
        document: ready.document,
        problem: '',
      }
    } catch (error) {
      return {
        lines: [...lines],
        problem: say`The form was filled on the screen and could not be saved as a file: ${wording(error)}`,
      }
    }
  }
}
