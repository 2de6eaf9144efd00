import '@shoelace-style/shoelace/dist/themes/light.css'
import '@shoelace-style/shoelace/dist/components/checkbox/checkbox.js'
import '@shoelace-style/shoelace/dist/components/option/option.js'
import '@shoelace-style/shoelace/dist/components/radio/radio.js'
import '@shoelace-style/shoelace/dist/components/radio-group/radio-group.js'
import '@shoelace-style/shoelace/dist/components/range/range.js'
import '@shoelace-style/shoelace/dist/components/select/select.js'
import '@shoelace-style/shoelace/dist/components/switch/switch.js'

document.body.innerHTML = `
  <form style="display: grid; gap: 14px; width: 420px; padding: 20px">
    <sl-select label="Range" name="range">
      <sl-option value="a">wide range</sl-option><sl-option value="b">middle range</sl-option>
    </sl-select>
    <sl-select label="Work locations" name="places" multiple>
      <sl-option value="attic">Attic</sl-option><sl-option value="crawl">Crawl space</sl-option>
      <sl-option value="rim">Rim joist</sl-option>
    </sl-select>
    <sl-radio-group label="Result" name="result">
      <sl-radio value="pass">Pass</sl-radio><sl-radio value="fail">Fail</sl-radio>
    </sl-radio-group>
    <sl-checkbox name="sealed">Attic sealed</sl-checkbox>
    <sl-switch name="fan">Ventilation present</sl-switch>
    <sl-range label="Stories" name="floors" min="1" max="4" value="1"></sl-range>
  </form>`

const form = document.querySelector('form')
window.pageState = () => {
  const data = new FormData(form ?? undefined)
  const text = (name: string) => data.get(name) ?? ''
  return {
    range: text('range'),
    places: data.getAll('places'),
    result: text('result'),
    floors: text('floors'),
    sealed: data.has('sealed'),
    fan: data.has('fan'),
  }
}
