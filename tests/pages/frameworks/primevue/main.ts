import Aura from '@primeuix/themes/aura'
import Checkbox from 'primevue/checkbox'
import MultiSelect from 'primevue/multiselect'
import PrimeVue from 'primevue/config'
import DatePicker from 'primevue/datepicker'
import InputNumber from 'primevue/inputnumber'
import InputText from 'primevue/inputtext'
import RadioButton from 'primevue/radiobutton'
import Select from 'primevue/select'
import Slider from 'primevue/slider'
import Textarea from 'primevue/textarea'
import ToggleSwitch from 'primevue/toggleswitch'
import { createApp, reactive } from 'vue'

const state = reactive<Record<string, unknown> & { date: Date | null; places: string[] }>({
  street: '',
  flow: null,
  date: null,
  range: null,
  places: [],
  result: null,
  sealed: false,
  fan: false,
  floors: 1,
  comments: '',
})
const iso = (date: Date) =>
  `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`
window.pageState = () => ({ ...state, places: Array.from(state.places), date: state.date && iso(state.date) })

const root = document.createElement('main')
document.body.append(root)
createApp({
  components: {
    Checkbox,
    DatePicker,
    InputNumber,
    InputText,
    MultiSelect,
    RadioButton,
    Select,
    Slider,
    Textarea,
    ToggleSwitch,
  },
  setup: () => ({ state, ranges: ['wide range', 'middle range'] }),
  template: `
    <form style="display: grid; gap: 1rem; width: 400px; padding: 1rem">
      <div><label for="street">Street address</label> <InputText id="street" v-model="state.street" /></div>
      <div><label for="flow">CFM50</label> <InputNumber inputId="flow" v-model="state.flow" :maxFractionDigits="1" /></div>
      <div><label for="date">Test date</label> <DatePicker inputId="date" v-model="state.date" dateFormat="mm/dd/yy" /></div>
      <div><label for="range">Range</label> <Select inputId="range" labelId="range" v-model="state.range" :options="ranges" placeholder="Choose" /></div>
      <div><label for="places">Work locations</label> <MultiSelect inputId="places" v-model="state.places" :options="['Attic', 'Crawl space', 'Rim joist']" /></div>
      <fieldset><legend>Result</legend>
        <RadioButton v-model="state.result" inputId="pass" name="result" value="Pass" /><label for="pass">Pass</label>
        <RadioButton v-model="state.result" inputId="fail" name="result" value="Fail" /><label for="fail">Fail</label>
      </fieldset>
      <div><Checkbox v-model="state.sealed" inputId="sealed" binary /> <label for="sealed">Attic sealed</label></div>
      <div><ToggleSwitch v-model="state.fan" inputId="fan" /> <label for="fan">Ventilation present</label></div>
      <div><span id="floors">Stories</span> <Slider v-model="state.floors" :min="1" :max="4" aria-labelledby="floors" /></div>
      <div><label for="comments">Comments</label> <Textarea id="comments" v-model="state.comments" /></div>
    </form>`,
})
  .use(PrimeVue, { theme: { preset: Aura } })
  .mount(root)
