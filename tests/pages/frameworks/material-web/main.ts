import '@material/web/checkbox/checkbox.js'
import '@material/web/radio/radio.js'
import '@material/web/select/filled-select.js'
import '@material/web/select/outlined-select.js'
import '@material/web/select/select-option.js'
import '@material/web/slider/slider.js'
import '@material/web/switch/switch.js'
import '@material/web/textfield/filled-text-field.js'

document.body.innerHTML = `
  <form style="display: grid; gap: 14px; width: 420px; padding: 20px">
    <md-filled-text-field label="Street address" name="street"></md-filled-text-field>
    <md-filled-text-field label="CFM50" type="number" name="flow"></md-filled-text-field>
    <md-filled-text-field label="Test date" type="date" name="date"></md-filled-text-field>
    <md-outlined-select label="Range" name="range">
      <md-select-option value="a"><div slot="headline">wide range</div></md-select-option>
      <md-select-option value="b"><div slot="headline">middle range</div></md-select-option>
    </md-outlined-select>
    <md-filled-select label="Zone" name="zone">
      <md-select-option value="4"><div slot="headline">Zone 4</div></md-select-option>
      <md-select-option value="5"><div slot="headline">Zone 5</div></md-select-option>
      <md-select-option value="6"><div slot="headline">Zone 6</div></md-select-option>
    </md-filled-select>
    <div role="radiogroup" aria-labelledby="result">
      <span id="result">Result</span>
      <md-radio name="result" value="Pass" id="pass"></md-radio><label for="pass">Pass</label>
      <md-radio name="result" value="Fail" id="fail"></md-radio><label for="fail">Fail</label>
    </div>
    <label><md-checkbox name="sealed"></md-checkbox> Attic sealed</label>
    <label>Ventilation present <md-switch name="fan"></md-switch></label>
    <div><span id="floors">Stories</span> <md-slider min="1" max="4" value="1" name="floors" aria-label="Stories"></md-slider></div>
    <md-filled-text-field label="Comments" type="textarea" rows="3" name="comments"></md-filled-text-field>
  </form>`

const form = document.querySelector('form')
window.pageState = () => {
  const data = new FormData(form ?? undefined)
  const text = (name: string) => data.get(name) ?? ''
  return {
    ...Object.fromEntries(
      ['street', 'flow', 'date', 'range', 'zone', 'result', 'floors', 'comments'].map((name) => [name, text(name)]),
    ),
    sealed: data.has('sealed'),
    fan: data.has('fan'),
  }
}
