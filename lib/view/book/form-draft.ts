/**
 * What is typed into a form of the book and not added yet. It is kept in the extension's own storage at each keystroke,
 * which is there at once after a kill; what a page keeps for itself is written some seconds later.
 */
import { browser } from '../../browser.ts'

const storage = () => (browser as typeof browser | undefined)?.storage?.local

const nameOf = (form: string): string => `draft ${form}`

/** What stands in a form that was not sent off, or undefined. */
export async function readForm(form: string): Promise<object | undefined> {
  const name = nameOf(form)
  const kept = (
    await storage()
      ?.get(name)
      .catch(() => undefined)
  )?.[name] as unknown
  return typeof kept === 'object' && kept !== null ? kept : undefined
}

/** The texts of a form as kept, over those of a blank one; what is no text of it is passed over. */
export function textsOver<T extends Readonly<Record<string, string>>>(blank: T, kept: object | undefined): T {
  const own = Object.entries(kept ?? {}).filter(([key, text]) => Object.hasOwn(blank, key) && typeof text === 'string')
  return { ...blank, ...Object.fromEntries(own) }
}

/** Keeps what stands in a form. Never throws: the form is still there. */
export function keepForm(form: string, typed: object): void {
  void storage()
    ?.set({ [nameOf(form)]: typed })
    .catch((error: unknown) => console.error('The form was not kept.', error))
}

/** To be called when a form was sent off or left. */
export function dropForm(form: string): void {
  void storage()
    ?.remove(nameOf(form))
    .catch((error: unknown) => console.error('The form was not put away.', error))
}
