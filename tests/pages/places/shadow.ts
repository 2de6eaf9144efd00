/** Fields in nested open and closed shadow roots, drawn by Lit. The state is kept by the outermost element. */
import { html, LitElement } from 'lit'

declare global {
  interface Window {
    keep: (key: string, value: unknown) => void
  }
}

function field(mode: ShadowRootMode) {
  return class extends LitElement {
    static override shadowRootOptions = { ...LitElement.shadowRootOptions, mode }
    static override properties = { label: {}, key: {}, kind: {}, options: {}, value: { state: true } }
    declare label: string
    declare key: string
    declare kind: string
    declare options: string
    declare value: string

    #hear(event: Event): void {
      this.value = (event.target as HTMLInputElement).value
      window.keep(this.key, this.value)
    }

    override render(): unknown {
      if (this.options)
        return html`<label for="c">${this.label}</label
          ><select id="c" .value=${this.value ?? ''} @change=${this.#hear}>
            ${['', ...this.options.split('|')].map((option) => html`<option>${option}</option>`)}
          </select>`
      return html`<label for="c">${this.label}</label
        ><input id="c" type=${this.kind || 'text'} .value=${this.value ?? ''} @input=${this.#hear} />`
    }
  }
}

function part(mode: ShadowRootMode, title: string, body: () => unknown) {
  return class extends LitElement {
    static override shadowRootOptions = { ...LitElement.shadowRootOptions, mode }
    override render(): unknown {
      return html`<h2>${title}</h2>
        ${body()}`
    }
  }
}

customElements.define('open-field', field('open'))
customElements.define('sealed-field', field('closed'))
customElements.define(
  'part-building',
  part(
    'open',
    'Building',
    () =>
      html`<open-field label="Street address" key="street"></open-field>
        <sealed-field label="Conditioned volume (cu ft)" key="volume"></sealed-field>`,
  ),
)
customElements.define(
  'part-before',
  part(
    'closed',
    'Before work',
    () =>
      html`<sealed-field label="CFM50" key="before cfm50"></sealed-field>
        <open-field label="Test date" kind="date" key="before date"></open-field>`,
  ),
)
customElements.define(
  'part-after',
  part(
    'closed',
    'After work',
    () =>
      html`<sealed-field label="CFM50" key="after cfm50"></sealed-field>
        <open-field label="Test date" kind="date" key="after date"></open-field>
        <sealed-field label="Range" options="wide|middle|narrow" key="after range"></sealed-field>`,
  ),
)
document.body.insertAdjacentHTML(
  'beforeend',
  '<part-building></part-building><part-before></part-before><part-after></part-after>',
)
