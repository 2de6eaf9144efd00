import { createApp, reactive } from 'vue'

const state = reactive({
  street: '',
  flow: null,
  date: '',
  range: '',
  places: [],
  result: '',
  sealed: false,
  floors: '1',
  comments: '',
})
window.pageState = () => JSON.parse(JSON.stringify(state))

const root = document.createElement('main')
document.body.append(root)
createApp({
  setup: () => ({ state }),
  template: `
    <form>
      <label>Street address <input v-model.trim="state.street"></label>
      <label>CFM50 <input type="number" v-model.number="state.flow"></label>
      <label>Test date <input type="date" v-model.lazy="state.date"></label>
      <label>Range <select v-model="state.range"><option value="">Select</option><option>wide</option><option>middle</option></select></label>
      <label>Work locations <select multiple v-model="state.places"><option>Attic</option><option>Crawl space</option><option>Rim joist</option></select></label>
      <fieldset><legend>Result</legend>
        <label><input type="radio" v-model="state.result" value="Pass"> Pass</label>
        <label><input type="radio" v-model="state.result" value="Fail"> Fail</label>
      </fieldset>
      <label><input type="checkbox" v-model="state.sealed"> Attic sealed</label>
      <label>Stories <input type="range" min="1" max="4" v-model="state.floors"></label>
      <label>Comments <textarea v-model="state.comments"></textarea></label>
    </form>`,
}).mount(root)
