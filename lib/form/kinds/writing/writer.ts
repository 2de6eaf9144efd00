import type { Control } from '../../page/controls.ts'

/** Why a control was left alone or not set; nothing when it was written. */
type Reason = string | undefined

/** Writes a text into a control of one kind. `exact`: nothing else stays beside the text. */
export type Writer = (control: Control, text: string, file?: File, exact?: boolean) => Reason | Promise<Reason>
