import 'quasar/dist/quasar.css'
import { createApp, reactive } from 'vue'
import { Quasar, QCheckbox, QInput, QOptionGroup, QSelect, QSlider, QToggle } from 'quasar'

const state = reactive({
  street: '',
  flow: null as number | null,
  date: '',
  phone: '',
  range: '',
  places: [] as string[],
  tags: [] as string[],
  result: '',
  sealed: false,
  fan: false,
  floors: 1,
  comments: '',
})
window.pageState = () => ({ ...state, places: [...state.places], tags: [...state.tags] })

document.body.innerHTML = '<div id="app"></div>'
createApp({
  components: { QCheckbox, QInput, QOptionGroup, QSelect, QSlider, QToggle },
  setup: () => ({
    state,
    ranges: [
      { label: 'wide range', value: 'a' },
      { label: 'middle range', value: 'b' },
    ],
    locations: ['Attic', 'Crawl space', 'Rim joist'],
    results: ['Pass', 'Fail'].map((value) => ({ label: value, value })),
  }),
  template: `
    <form class="q-pa-md q-gutter-md" style="width: 460px">
      <q-input v-model="state.street" label="Street address" />
      <q-input v-model.number="state.flow" type="number" label="CFM50" filled />
      <q-input v-model="state.date" label="Test date" mask="##/##/####" placeholder="MM/DD/YYYY" outlined />
      <q-input v-model="state.phone" label="Phone" mask="(###) ### - ####" unmasked-value />
      <q-select v-model="state.range" :options="ranges" emit-value map-options label="Range" />
      <q-select v-model="state.places" :options="locations" multiple use-chips label="Work locations" />
      <q-select v-model="state.tags" use-input use-chips multiple hide-dropdown-icon new-value-mode="add-unique" label="Keywords" />
      <div><span id="result">Result</span>
        <q-option-group v-model="state.result" :options="results" type="radio" aria-labelledby="result" /></div>
      <q-checkbox v-model="state.sealed" label="Attic sealed" />
      <q-toggle v-model="state.fan" label="Ventilation present" />
      <div><span>Stories</span><q-slider v-model="state.floors" :min="1" :max="4" :step="1" label aria-label="Stories" /></div>
      <q-input v-model="state.comments" type="textarea" label="Comments" />
    </form>`,
})
  .use(Quasar, {})
  .mount('#app')
