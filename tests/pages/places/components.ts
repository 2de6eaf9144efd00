/** Fields of a web component library; the state is kept from the library's own events. */
import '@shoelace-style/shoelace/dist/components/input/input.js'
import '@shoelace-style/shoelace/dist/components/textarea/textarea.js'
import '@shoelace-style/shoelace/dist/components/checkbox/checkbox.js'
import type SlInput from '@shoelace-style/shoelace/dist/components/input/input.js'

declare global {
  interface Window {
    keep: (key: string, value: unknown) => void
  }
}

document.body.insertAdjacentHTML(
  'beforeend',
  `<h1>Air leakage report</h1><form>
    <h2>Building</h2>
    <sl-input label="Street address" id="street"></sl-input>
    <sl-input label="Conditioned floor area (sq ft)" type="number" id="area"></sl-input>
    <sl-input label="Conditioned volume (cu ft)" type="number" id="volume"></sl-input>
    <h2>After work</h2>
    <sl-input label="Test date" type="date" id="date"></sl-input>
    <sl-input label="CFM50" type="number" id="cfm50"></sl-input>
    <sl-input label="ACH50" type="number" step="0.01" id="ach50"></sl-input>
    <h2>Tester</h2>
    <sl-input label="Licence number" id="licence"></sl-input>
    <sl-textarea label="Comments" id="notes"></sl-textarea></form>`,
)
for (const type of ['sl-input', 'sl-change'])
  document.addEventListener(type, (event) => {
    const element = event.target as SlInput
    window.keep(element.id, element.value)
  })
