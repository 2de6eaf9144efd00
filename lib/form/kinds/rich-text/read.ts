/** The text of an editor as a person reads it. */
export function richText(editor: HTMLElement): string {
  return editor.innerText
    .replaceAll('\u00A0', ' ')
    .replaceAll(/[\u200B\uFEFF]/g, '')
    .replaceAll(/\n{2,}/g, '\n')
    .trim()
}
