/** What a page does with what was filled into it, before the book hears that the fill has ended: a file is saved. */
import type { FiledDocument } from '../../book/schema.ts'
import type { Plan } from '../../form/fill/plan.ts'
import type { ReceiptLine } from '../../form/schema.ts'

export interface Filed {
  /** The lines as the saved file holds them. */
  lines: ReceiptLine[]
  /** What was saved; left out where that failed. */
  document?: FiledDocument
  /** Why it could not be saved; empty when it was. */
  problem: string
}

type Filing = (lines: readonly ReceiptLine[], plan: Plan) => Promise<Filed>

let filing: Filing | undefined

/** Has each fill saved as a file. */
export function fileWith(how: Filing): void {
  filing = how
}

/** Saves what was filled, where this page is one for files. */
export const fileFilled: (...filled: Parameters<Filing>) => Promise<Filed | undefined> = async (...filled) =>
  filing?.(...filled)
