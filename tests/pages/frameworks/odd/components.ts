/** Components whose names stand outside them, and whose roles no attribute says; a table with two rows of heads. */
import { state } from './state.ts'

const base = ':host { display: inline-block; border: 1px solid; min-width: 20px; min-height: 20px }'

class LineField extends HTMLElement {
  connectedCallback() {
    const root = this.attachShadow({ mode: 'open' })
    root.innerHTML = `<style>${base}</style><slot name="label"></slot><div><input></div>`
    const input = root.querySelector('input')!
    input.addEventListener('input', () => Object.assign(state, { [this.dataset['key'] ?? '']: input.value }))
  }
}

/** On or off, told by ElementInternals alone. */
class PlainSwitch extends HTMLElement {
  static formAssociated = true
  #internals = this.attachInternals()
  connectedCallback() {
    this.#internals.role = 'switch'
    this.tabIndex = 0
    this.attachShadow({ mode: 'open' }).innerHTML = `<style>${base}</style><i></i>`
    this.addEventListener('click', () => {
      state.sill = !state.sill
      this.#internals.ariaChecked = String(state.sill)
      if (state.sill) this.#internals.states.add('checked')
      else this.#internals.states.delete('checked')
    })
  }
}

class PlainRadio extends HTMLElement {
  static formAssociated = true
  #internals = this.attachInternals()
  connectedCallback() {
    this.#internals.role = 'radio'
    this.tabIndex = 0
    this.attachShadow({ mode: 'open' }).innerHTML = `<style>${base}</style><i></i>`
    this.addEventListener('click', () => {
      state.stage = this.getAttribute('value') ?? ''
      for (const each of this.parentElement!.querySelectorAll<PlainRadio>('plain-radio')) each.show(each === this)
    })
  }
  show(on: boolean) {
    if (on) this.#internals.states.add('checked')
    else this.#internals.states.delete('checked')
  }
}

customElements.define('line-field', LineField)
customElements.define('plain-switch', PlainSwitch)
customElements.define('plain-radio', PlainRadio)

const parts = document.createElement('template')
parts.innerHTML = `
  <div><line-field data-key="street"><b slot="label">Street address</b></line-field></div>
  <div><label>Town <line-field data-key="town"></line-field></label></div>
  <div><label>Sill sealed <plain-switch></plain-switch></label></div>
  <div role="group" aria-label="Stage"><plain-radio value="rough" id="rough"></plain-radio><label for="rough">Rough-in</label>
    <plain-radio value="final" id="final"></plain-radio><label for="final">Final</label></div>
  <table border="1"><thead><tr><th rowspan="2">System</th><th colspan="2">Flow at 25 Pa</th></tr><tr><th>Before</th><th>After</th></tr></thead>
    <tbody><tr><td>1</td><td><input data-key="before"></td><td><input data-key="after"></td></tr></tbody></table>`
for (const input of parts.content.querySelectorAll<HTMLInputElement>('td input'))
  input.addEventListener('input', () => Object.assign(state, { [input.dataset['key'] ?? '']: input.value }))

queueMicrotask(() => document.querySelector('form')?.append(parts.content))
