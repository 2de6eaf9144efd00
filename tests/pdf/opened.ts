/** Opens forms as the extension's page does, with the library's build for Node. */
import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs'
import { NotOpened, openForm, type Opened } from '../../lib/pdf/open.ts'
import type { Measure } from '../../lib/pdf/fit.ts'
import { saveForm, type Saved, type Values } from '../../lib/pdf/save.ts'

export const open = (bytes: Uint8Array, password?: string): Promise<Opened> => openForm(bytes, { pdfjs, password })

export const save = (opened: Opened, values: Values, measure?: Measure): Promise<Saved> =>
  saveForm(opened, values, { pdfjs, measure })

/** The sentence with which a file is refused; empty when it is opened. */
export async function refusal(bytes: Uint8Array, password?: string): Promise<string> {
  try {
    await open(bytes, password)
    return ''
  } catch (error) {
    if (error instanceof NotOpened) return error.message
    throw error
  }
}
