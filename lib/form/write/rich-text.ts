/** Rich-text editors: the text is put in at the caret, or at the end; what stands there stays. */
import type { Control } from '../controls.ts'
import { richText } from '../read/rich-text.ts'
import { enter, leave } from './events.ts'
import { byHand } from './reasons.ts'
import { pause } from './wait.ts'
import { say } from '../../words/say.ts'

/** Whether the person has left the caret in the editor. */
function holdsCaret(editor: HTMLElement): boolean {
  const selection = editor.ownerDocument.getSelection()
  return Boolean(selection?.isCollapsed && editor.contains(selection.anchorNode))
}

/** Puts the caret at the end, on a line of its own. */
function goToEnd(editor: HTMLElement): void {
  const selection = editor.ownerDocument.getSelection()
  selection?.selectAllChildren(editor.lastElementChild ?? editor)
  selection?.collapseToEnd()
  if ((editor.lastElementChild ?? editor).textContent?.trim()) editor.ownerDocument.execCommand('insertParagraph')
}

function typeLines(editor: HTMLElement, text: string): void {
  const { ownerDocument } = editor
  for (const [at, line] of text.split('\n').entries()) {
    if (at > 0) ownerDocument.execCommand('insertParagraph')
    if (line) ownerDocument.execCommand('insertText', false, line)
  }
}

function paste(editor: HTMLElement, text: string): void {
  const data = new DataTransfer()
  data.setData('text/plain', text)
  editor.dispatchEvent(
    new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true, composed: true }),
  )
}

const squeeze = (text: string): string => text.replaceAll(/\s+/g, ' ').trim()

export async function writeRichText({ element }: Control, text: string): Promise<string | undefined> {
  const holds = () => squeeze(richText(element)).includes(squeeze(text))
  if (text === '') return say`an editor is emptied by hand`
  const before = richText(element)
  const placed = holdsCaret(element)
  enter(element)
  try {
    if (!placed) goToEnd(element)
    typeLines(element, text)
    await pause(30)
    if (holds()) return undefined
    // Nothing arrived: some editors take only what is pasted.
    if (richText(element) !== before) return byHand
    paste(element, text)
    await pause(30)
    return holds() ? undefined : byHand
  } finally {
    leave(element)
  }
}
