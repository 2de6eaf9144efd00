/** What the page itself holds. */
export const state = {
  places: [] as string[],
  crew: [] as string[],
  notes: '',
  range: '',
  zone: '',
  wind: '',
  fan: false,
  permit: '',
  cost: 0,
  tested: '',
  sealed: '',
  inspected: '',
  invoiced: '',
  street: '',
  town: '',
  sill: false,
  stage: '',
  before: '',
  after: '',
}
window.pageState = () => ({ ...state, places: [...state.places], crew: [...state.crew] })
