import '@fluentui/web-components/checkbox.js'
import '@fluentui/web-components/dropdown.js'
import '@fluentui/web-components/field.js'
import '@fluentui/web-components/listbox.js'
import '@fluentui/web-components/option.js'
import '@fluentui/web-components/radio.js'
import '@fluentui/web-components/radio-group.js'
import '@fluentui/web-components/slider.js'
import '@fluentui/web-components/switch.js'
import '@fluentui/web-components/text-input.js'
import '@fluentui/web-components/textarea.js'

const field = (label: string, control: string, place = 'above') =>
  `<fluent-field label-position="${place}"><label slot="label">${label}</label>${control}</fluent-field>`

document.body.innerHTML = `
  <form style="display: grid; gap: 14px; width: 420px; padding: 20px">
    <fluent-text-input name="street">Street address</fluent-text-input>
    <fluent-text-input name="flow" inputmode="numeric">CFM50</fluent-text-input>
    ${field('Test date', '<fluent-text-input slot="input" name="date" placeholder="MM/DD/YYYY"></fluent-text-input>')}
    ${field(
      'Range',
      `<fluent-dropdown slot="input" name="range"><fluent-listbox>
        <fluent-option value="a">wide range</fluent-option><fluent-option value="b">middle range</fluent-option>
      </fluent-listbox></fluent-dropdown>`,
    )}
    ${field(
      'Result',
      `<fluent-radio-group slot="input" name="result">
        ${field('Pass', '<fluent-radio slot="input" name="result" value="Pass"></fluent-radio>', 'after')}
        ${field('Fail', '<fluent-radio slot="input" name="result" value="Fail"></fluent-radio>', 'after')}
      </fluent-radio-group>`,
    )}
    ${field('Attic sealed', '<fluent-checkbox slot="input" name="sealed"></fluent-checkbox>', 'after')}
    ${field('Ventilation present', '<fluent-switch slot="input" name="fan"></fluent-switch>', 'after')}
    ${field('Stories', '<fluent-slider slot="input" name="floors" min="1" max="4" step="1" value="1"></fluent-slider>')}
    <fluent-textarea name="comments"><span slot="label">Comments</span></fluent-textarea>
  </form>`

const form = document.querySelector('form')
window.pageState = () => {
  const data = new FormData(form ?? undefined)
  const text = (name: string) => data.get(name) ?? ''
  return {
    ...Object.fromEntries(
      ['street', 'flow', 'date', 'range', 'result', 'floors', 'comments'].map((name) => [name, text(name)]),
    ),
    // A form is told of the place of the handle only when it has moved.
    floors: document.querySelector<HTMLElement & { value: string }>('fluent-slider')?.value ?? '',
    sealed: data.has('sealed'),
    fan: data.has('fan'),
  }
}
