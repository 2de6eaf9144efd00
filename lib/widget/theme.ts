import type { Options } from './types.ts'

/** The chosen theme; else a page that says it can be dark gets what the visitor prefers, and any other is light. */
export function themeOf(element: Element, chosen: Options['theme']): Options['theme'] {
  if (chosen !== '') return chosen
  if (/dark/.test(getComputedStyle(element).colorScheme)) return 'auto'
  return matchMedia('(prefers-contrast: more)').matches ? 'contrast' : 'light'
}
