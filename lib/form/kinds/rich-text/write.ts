/** Rich-text editors: the text is put in at the caret, or at the end; what stands there stays. */
import type { Control } from '../../page/controls.ts'
import { richText } from './read.ts'
import { squeeze } from '../../words.ts'
import { command } from '../writing/command.ts'
import { enter, leave } from '../writing/events.ts'
import { byHand } from '../writing/reasons.ts'
import { pause, until } from '../writing/wait.ts'
import { say } from '../../../words/say.ts'

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
  if ((editor.lastElementChild ?? editor).textContent?.trim()) command(editor, 'insertParagraph')
}

function typeLines(editor: HTMLElement, text: string): void {
  for (const [at, line] of text.split('\n').entries()) {
    if (at > 0) command(editor, 'insertParagraph')
    if (line) command(editor, 'insertText', line)
  }
}

function paste(editor: HTMLElement, text: string): void {
  const data = new DataTransfer()
  data.setData('text/plain', text)
  editor.dispatchEvent(
    new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true, composed: true }),
  )
}

interface Place {
  node: Text
  offset: number
}

const gap = /[\s\u200B\uFEFF]/

/** Every letter of the editor with its place; white space tells nothing, for editors draw it in ways of their own. */
function lettersOf(editor: HTMLElement): { text: string; places: Place[] } {
  const walker = editor.ownerDocument.createTreeWalker(editor, NodeFilter.SHOW_TEXT)
  const places: Place[] = []
  let text = ''
  while (walker.nextNode()) {
    const node = walker.currentNode as Text
    for (let offset = 0; offset < node.data.length; offset++) {
      const letter = node.data.charAt(offset)
      if (gap.test(letter)) continue
      text += letter
      places.push({ node, offset })
    }
  }
  return { text, places }
}

/** Marks what stands in the editor beyond `before`; false when more was changed than something put in. */
function markAdded(editor: HTMLElement, before: string): boolean {
  const was = before
    .split('')
    .filter((letter) => !gap.test(letter))
    .join('')
  const { text, places } = lettersOf(editor)
  const selection = editor.ownerDocument.getSelection()
  if (!selection || text.length <= was.length) return false
  if (was === '') {
    selection.selectAllChildren(editor)
    return true
  }
  let start = 0
  while (start < was.length && text[start] === was[start]) start++
  const end = start + text.length - was.length
  if (text.slice(end) !== was.slice(start)) return false
  const [last, first, previous] = [places[end - 1], places[start], places[start - 1]]
  if (!last || !first) return false
  const range = editor.ownerDocument.createRange()
  // What was put in at the end began with a line of its own, which goes with it.
  if (end === text.length && previous) range.setStart(previous.node, previous.offset + 1)
  else range.setStart(first.node, first.offset)
  range.setEnd(last.node, last.offset + 1)
  selection.removeAllRanges()
  selection.addRange(range)
  return true
}

async function takeOut(editor: HTMLElement, before: string): Promise<string | undefined> {
  const left = say`the text was added to what stood there: take it out by hand`
  enter(editor)
  try {
    if (!markAdded(editor, before)) return left
    // Editors that keep a selection of their own hear of it a moment later.
    await pause(30)
    editor.ownerDocument.execCommand('delete')
    return (await until(() => squeeze(richText(editor)) === squeeze(before), 300)) ? undefined : left
  } finally {
    leave(editor)
  }
}

export async function writeRichText(
  { element }: Control,
  text: string,
  _file?: File,
  exact = false,
): Promise<string | undefined> {
  if (exact) return takeOut(element, text)
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
