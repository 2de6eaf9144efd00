/** Opening a PDF form: what stands in it, or a sentence that says why it cannot be filled and what to do. */
import { say } from '../words/say.ts'
import { toOpen } from './appearances.ts'
import { bounds } from './bounds.ts'
import { fieldsOf, type Field } from './fields.ts'
import type { Measure } from './fit.ts'
import { formId } from './form-id.ts'
import type { Library, Pdf } from './library.ts'
import { bursts, whyNot } from './look.ts'
import { callFields, type Called } from './names.ts'
import { piecesOf, type Piece } from './pieces.ts'

export interface Opened {
  pdf: Pdf
  bytes: Uint8Array
  /** The title that the file has, or the first words of its first page. */
  title: string
  fields: Field[]
  called: Map<string, Called>
  /** The words of each page. */
  pieces: Piece[][]
  /** The same for every copy of this form, filled or not. */
  id: string
  /** What the person is to know before filling. */
  notes: string[]
  password: string | undefined
}

/** Why a file is not opened, in words; `password`: it asks for one, for the first time or again. */
export class NotOpened extends Error {
  readonly password: 'asked' | 'wrong' | undefined

  constructor(message: string, password?: 'asked' | 'wrong', cause?: unknown) {
    super(message, { cause })
    this.password = password
  }
}

export interface Opening {
  pdfjs: Library
  /** The thread that reads the file; another one, which can be ended, for each file. */
  worker?: unknown
  password?: string | undefined
  signal?: AbortSignal | undefined
  /** Tells how wide texts are, so that one too long for its field is told. */
  measure?: Measure | undefined
  /** Hears how many pages of how many were read. */
  onProgress?: (done: number, all: number) => void
}

const tooLong = () =>
  say`Reading this file takes too long: it is damaged, or made to hold programs up. Fetch the form once more, or ask the office for another copy.`
const stopped = () => say`Opening was stopped. Nothing was changed.`

/** What a promise gives, unless it takes too long or the person stops it. */
export async function inTime<T>(work: Promise<T>, signal: AbortSignal | undefined): Promise<T> {
  const { promise: ended, reject } = Promise.withResolvers<never>()
  const timer = setTimeout(() => reject(new NotOpened(tooLong())), bounds.patience)
  const hear = () => reject(new NotOpened(stopped()))
  if (signal?.aborted) hear()
  signal?.addEventListener('abort', hear)
  try {
    return await Promise.race([work, ended])
  } finally {
    clearTimeout(timer)
    signal?.removeEventListener('abort', hear)
  }
}

/** Bit of the permissions by which a locked file lets forms be filled (ISO 32000-1, table 22, bits 9 and 6). */
const fill = 0x100
const annotate = 0x20

/** Opens bytes with the library, scripts and everything from elsewhere left out. */
export const begin = ({ pdfjs, worker, password }: Opening, bytes: Uint8Array) =>
  pdfjs.getDocument({
    // The library takes what it is given for its own.
    data: new Uint8Array(bytes),
    ...(worker !== undefined && { worker }),
    ...(password !== undefined && { password }),
    isEvalSupported: false,
    enableXfa: false,
    useWasm: false,
    disableAutoFetch: true,
    stopAtErrors: false,
    maxImageSize: 60_000_000,
    verbosity: 0,
  })

function refusal(error: unknown, given: boolean): NotOpened {
  const { name = '', message = '' } = (error ?? {}) as Partial<Error>
  if (error instanceof NotOpened) return error
  if (name === 'PasswordException')
    return given
      ? new NotOpened(say`The password does not open this PDF.`, 'wrong', error)
      : new NotOpened(say`This PDF asks for a password before it shows anything.`, 'asked', error)
  if (error instanceof RangeError && message === 'fields')
    return new NotOpened(
      say`This file has more than ${bounds.fields} fields, and no form has so many. Ask the office for the form itself.`,
      undefined,
      error,
    )
  return new NotOpened(
    say`This PDF is damaged and cannot be read. Fetch the form once more, or ask the office for another copy.`,
    undefined,
    error,
  )
}

/**
 * Opens a form.
 * @param bytes of the file; they are not changed
 * @throws NotOpened with a sentence that says what it is and what to do
 */
export async function openForm(bytes: Uint8Array, opening: Opening): Promise<Opened> {
  const why = whyNot(bytes)
  if (why) throw new NotOpened(why)
  if (await bursts(bytes, opening.signal))
    throw new NotOpened(
      say`This file unpacks to far more than a form needs: it is made to fill the computer’s memory. Do not use it, and ask the office for the form itself.`,
    )
  const task = begin(opening, toOpen(bytes))
  try {
    const pdf = await inTime(task.promise, opening.signal)
    return await inTime(read(pdf, bytes, opening), opening.signal)
  } catch (error) {
    void task.destroy().catch(() => {})
    throw refusal(error, opening.password !== undefined)
  }
}

async function read(pdf: Pdf, bytes: Uint8Array, { onProgress, password }: Opening): Promise<Opened> {
  if (pdf.numPages < 1) throw new Error('no pages')
  if (pdf.numPages > bounds.pages)
    throw new NotOpened(
      say`This file has ${pdf.numPages} pages, and at most ${bounds.pages} are opened here. Take out the pages of the form and open those.`,
    )
  const allowed = await pdf.getPermissions()
  if (allowed && !allowed.has(fill) && !allowed.has(annotate))
    throw new NotOpened(
      say`Who made this PDF does not allow it to be filled in. Ask the office for a form that may be filled.`,
    )
  const { info } = (await pdf.getMetadata()) as { info: Record<string, unknown> }
  const fields = await fieldsOf(pdf, (done) => onProgress?.(done, 2 * pdf.numPages))
  if (info['IsXFAPresent'] === true && fields.length === 0)
    throw new NotOpened(
      say`This form is of a kind (XFA) that only the program it was made with can show. Ask the office for a plain PDF form, or fill it in that program.`,
    )
  if (info['IsSignaturesPresent'] === true && (await isSigned(pdf)))
    throw new NotOpened(
      say`This PDF is signed, and filling it would break the signature. Use an empty form that nobody has signed.`,
    )
  const pieces: Piece[][] = []
  for (let number = 1; number <= pdf.numPages; number++) {
    pieces.push(await piecesOf(await pdf.getPage(number)))
    onProgress?.(pdf.numPages + number, 2 * pdf.numPages)
  }
  const said = typeof info['Title'] === 'string' ? info['Title'].trim().slice(0, bounds.label) : ''
  const title = said || (pieces[0]?.[0]?.text ?? '')
  return {
    pdf,
    bytes,
    title,
    fields,
    called: callFields(fields, pieces),
    pieces,
    id: await formId(pdf.numPages, fields, pieces[0] ?? []),
    notes: notesOn(fields, info),
    password,
  }
}

/** Whether a signature field has been signed, which the bytes do not tell where they are encrypted. */
async function isSigned(pdf: Pdf): Promise<boolean> {
  const objects = (await pdf.getFieldObjects()) as Record<string, { type?: string; value?: unknown }[]> | null
  return Object.values(objects ?? {}).some((all) =>
    all.some(({ type, value }) => type === 'signature' && Boolean(value)),
  )
}

function notesOn(fields: readonly Field[], info: Record<string, unknown>): string[] {
  const computed = fields.filter((field) => field.computed).length
  return [
    ...(fields.length === 0 ? [say`This PDF has no fields to fill in.`] : []),
    ...(computed > 0
      ? [
          say`${computed} fields of this form are worked out by scripts in the file, which never run here: look at them in your PDF viewer after saving.`,
        ]
      : []),
    ...(info['IsXFAPresent'] === true
      ? [say`This form holds its data twice (XFA). Both are written; look at the saved file before you hand it in.`]
      : []),
  ]
}
