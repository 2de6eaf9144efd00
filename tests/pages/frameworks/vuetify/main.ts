import 'vuetify/styles'
import { createApp, reactive } from 'vue'
import { createVuetify } from 'vuetify/framework'
import {
  VApp,
  VAutocomplete,
  VCheckbox,
  VCombobox,
  VNumberInput,
  VRadio,
  VRadioGroup,
  VSelect,
  VSlider,
  VSwitch,
  VTextarea,
  VTextField,
} from 'vuetify/components'

const state = reactive({
  street: '',
  flow: null as number | null,
  date: '',
  range: '',
  town: '',
  places: [] as string[],
  tags: [] as string[],
  result: '',
  sealed: false,
  fan: false,
  floors: 1,
  rooms: null as number | null,
  comments: '',
})
window.pageState = () => ({ ...state, places: [...state.places], tags: [...state.tags] })

document.body.innerHTML = '<div id="app"></div>'
createApp({
  components: {
    VApp,
    VAutocomplete,
    VCheckbox,
    VCombobox,
    VNumberInput,
    VRadio,
    VRadioGroup,
    VSelect,
    VSlider,
    VSwitch,
    VTextarea,
    VTextField,
  },
  setup: () => ({
    state,
    ranges: [
      { title: 'wide range', value: 'a' },
      { title: 'middle range', value: 'b' },
    ],
    towns: ['Marrowby', 'Osier Bend', 'Larch Falls'],
    locations: ['Attic', 'Crawl space', 'Rim joist'],
  }),
  template: `
    <v-app><form style="width: 460px; padding: 20px">
      <v-text-field v-model="state.street" label="Street address" />
      <v-text-field v-model.number="state.flow" type="number" label="CFM50" />
      <v-text-field v-model="state.date" type="date" label="Test date" />
      <v-select v-model="state.range" :items="ranges" label="Range" />
      <v-autocomplete v-model="state.town" :items="towns" label="Town" />
      <v-select v-model="state.places" :items="locations" label="Work locations" multiple chips />
      <v-combobox v-model="state.tags" label="Keywords" multiple chips />
      <v-radio-group v-model="state.result" label="Result">
        <v-radio label="Pass" value="Pass" /><v-radio label="Fail" value="Fail" />
      </v-radio-group>
      <v-checkbox v-model="state.sealed" label="Attic sealed" />
      <v-switch v-model="state.fan" label="Ventilation present" />
      <v-slider v-model="state.floors" :min="1" :max="4" :step="1" label="Stories" />
      <v-number-input v-model="state.rooms" label="Bedrooms" />
      <v-textarea v-model="state.comments" label="Comments" />
    </form></v-app>`,
})
  .use(createVuetify())
  .mount('#app')
