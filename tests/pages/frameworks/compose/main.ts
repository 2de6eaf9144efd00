import Quill from 'quill'
import 'quill/dist/quill.snow.css'
import { schema } from 'prosemirror-schema-basic'
import { EditorState } from 'prosemirror-state'
import { EditorView } from 'prosemirror-view'

document.body.innerHTML = `
  <form id="mail">
    <label for="to">To</label>
    <div class="recipients-box"><span id="chips"></span><input id="to" placeholder="Type a name and press Enter"></div>
    <label>Subject <input id="subject"></label>
    <h3 id="plain-title">Message</h3>
    <div id="plain" contenteditable="true" aria-labelledby="plain-title"><p>Dear all,</p></div>
    <h3 id="quill-title">Note</h3>
    <div id="quill"><p>Results below.</p></div>
    <h3 id="prose-title">Report</h3>
    <div id="prose"></div>
    <button>Send</button>
  </form>`
const by = (id: string) => document.getElementById(id) as HTMLElement
const to = by('to') as HTMLInputElement
const recipients: string[] = []
let submitted = 0
by('mail').addEventListener('submit', (event) => {
  event.preventDefault()
  submitted++
})
to.addEventListener('keydown', (event) => {
  if (event.key === 'Backspace' && !to.value) {
    recipients.pop()
    by('chips').lastElementChild?.remove()
  }
  if (event.key !== 'Enter' || !to.value) return
  event.preventDefault()
  recipients.push(to.value)
  const chip = document.createElement('span')
  chip.textContent = to.value
  by('chips').append(chip)
  to.value = ''
})
let plain = by('plain').innerText
by('plain').addEventListener('input', () => {
  plain = by('plain').innerText
})
const quill = new Quill('#quill', { theme: 'snow' })
quill.root.setAttribute('aria-labelledby', 'quill-title')
const view = new EditorView(by('prose'), {
  state: EditorState.create({ schema }),
  attributes: { 'aria-labelledby': 'prose-title', role: 'textbox' },
})
window.pageState = () => ({
  recipients,
  subject: (by('subject') as HTMLInputElement).value,
  plain,
  quill: quill.getText(),
  prose: view.state.doc.textContent,
  submitted,
})
