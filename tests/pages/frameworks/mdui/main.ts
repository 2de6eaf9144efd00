import 'mdui/mdui.css'
import 'mdui/components/checkbox.js'
import 'mdui/components/menu-item.js'
import 'mdui/components/radio-group.js'
import 'mdui/components/radio.js'
import 'mdui/components/select.js'
import 'mdui/components/slider.js'
import 'mdui/components/switch.js'
import 'mdui/components/text-field.js'

document.body.innerHTML = `
  <form style="display: grid; gap: 14px; width: 420px; padding: 20px">
    <mdui-text-field label="Street address" name="street"></mdui-text-field>
    <mdui-text-field label="CFM50" type="number" name="flow" variant="outlined"></mdui-text-field>
    <mdui-text-field label="Test date" type="date" name="date"></mdui-text-field>
    <mdui-select label="Range" name="range">
      <mdui-menu-item value="a">wide range</mdui-menu-item>
      <mdui-menu-item value="b">middle range</mdui-menu-item>
    </mdui-select>
    <div><span>Result</span>
      <mdui-radio-group name="result">
        <mdui-radio value="Pass">Pass</mdui-radio>
        <mdui-radio value="Fail">Fail</mdui-radio>
      </mdui-radio-group>
    </div>
    <mdui-checkbox name="sealed">Attic sealed</mdui-checkbox>
    <label>Ventilation present <mdui-switch name="fan"></mdui-switch></label>
    <div><span>Stories</span><mdui-slider min="1" max="4" value="1" name="floors"></mdui-slider></div>
    <mdui-text-field label="Comments" rows="3" name="comments"></mdui-text-field>
  </form>`

const form = document.querySelector('form')
window.pageState = () => {
  const data = new FormData(form ?? undefined)
  const text = (name: string) => data.get(name) ?? ''
  return {
    ...Object.fromEntries(
      ['street', 'flow', 'date', 'range', 'result', 'floors', 'comments'].map((name) => [name, text(name)]),
    ),
    sealed: data.has('sealed'),
    fan: data.has('fan'),
  }
}
