import '@ui5/webcomponents/dist/CheckBox.js'
import '@ui5/webcomponents/dist/ComboBox.js'
import '@ui5/webcomponents/dist/ComboBoxItem.js'
import '@ui5/webcomponents/dist/Input.js'
import '@ui5/webcomponents/dist/Label.js'
import '@ui5/webcomponents/dist/Option.js'
import '@ui5/webcomponents/dist/RadioButton.js'
import '@ui5/webcomponents/dist/Select.js'
import '@ui5/webcomponents/dist/Switch.js'

const row = (id: string, label: string, control: string) =>
  `<div style="display: grid"><ui5-label for="${id}" show-colon>${label}</ui5-label>${control}</div>`

document.body.innerHTML = `
  <form style="display: grid; gap: 14px; width: 420px; padding: 20px">
    ${row('street', 'Street address', '<ui5-input id="street" name="street"></ui5-input>')}
    ${row('flow', 'CFM50', '<ui5-input id="flow" name="flow" type="Number"></ui5-input>')}
    ${row(
      'range',
      'Range',
      `<ui5-select id="range" name="range"><ui5-option value=""></ui5-option>
        <ui5-option value="a">wide range</ui5-option><ui5-option value="b">middle range</ui5-option></ui5-select>`,
    )}
    ${row(
      'town',
      'Town',
      `<ui5-combobox id="town" name="town"><ui5-cb-item text="Marrowby"></ui5-cb-item>
        <ui5-cb-item text="Osier Bend"></ui5-cb-item><ui5-cb-item text="Larch Falls"></ui5-cb-item></ui5-combobox>`,
    )}
    <div role="radiogroup" aria-labelledby="result"><ui5-label id="result">Result</ui5-label>
      <ui5-radio-button name="result" value="Pass" text="Pass"></ui5-radio-button>
      <ui5-radio-button name="result" value="Fail" text="Fail"></ui5-radio-button>
    </div>
    <ui5-checkbox name="sealed" text="Attic sealed"></ui5-checkbox>
    ${row('fan', 'Ventilation present', '<ui5-switch id="fan" name="fan"></ui5-switch>')}
  </form>`

const form = document.querySelector('form')
window.pageState = () => {
  const data = new FormData(form ?? undefined)
  const text = (name: string) => data.get(name) ?? ''
  return {
    ...Object.fromEntries(['street', 'flow', 'range', 'town', 'result'].map((name) => [name, text(name)])),
    sealed: data.has('sealed'),
    fan: data.has('fan'),
  }
}
