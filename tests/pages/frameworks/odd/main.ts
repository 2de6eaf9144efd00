/** Controls as pages draw them by hand: little of them is said by role or label, and each wants to be used in its own way. */
import './components.ts'
import './dates.ts'
import { state } from './state.ts'

const at = <E extends HTMLElement = HTMLElement>(id: string) => document.getElementById(id) as E

document.body.innerHTML = `
  <style>
    form > div { margin: 14px } .pop { position: absolute; background: white; border: 1px solid; padding: 4px; margin: 0; z-index: 2 }
    .pop li { list-style: none; padding: 4px } .box { display: inline-block; border: 1px solid; min-width: 160px; min-height: 20px; padding: 2px }
    .tiny { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%) } .drawing { display: inline-block; width: 40px; height: 20px; background: silver }
    .search { opacity: 0; position: absolute; width: 1px }
  </style>
  <form style="width: 520px; padding: 20px">
    <div><label>Work locations <input id="site-chips" autocomplete="off"></label><div id="made"></div></div>
    <div><label for="crew">Crew</label> <input id="crew"><ul id="crewlist" class="chips"></ul></div>
    <div><label for="plain">Notes for the office</label> <input id="plain"><ul id="none"></ul></div>
    <div><span id="rangename">Range</span> <div class="box" role="button" tabindex="0" aria-haspopup="listbox" aria-labelledby="rangename range" id="range">Choose</div></div>
    <div><span id="zonename">Zone</span> <div class="box" role="combobox" tabindex="0" aria-haspopup="listbox" aria-labelledby="zonename" id="zone"><span id="zonetext"></span><input class="search" aria-autocomplete="list" tabindex="-1"></div></div>
    <div><span id="windname">Wind</span> <button type="button" role="combobox" aria-haspopup="listbox" aria-expanded="false" aria-labelledby="windname" id="wind"></button></div>
    <div><span>Ventilation present</span> <span class="tiny" role="switch" tabindex="0" aria-checked="false" aria-label="Ventilation present" id="fan"></span><span class="drawing" id="fandrawing"></span></div>
    <div><label>Permit <input id="permit"></label></div>
    <div><label>Cost <input id="cost"></label></div>
  </form>`

/** Makes a chip of what stands in the field when Enter is typed, and of nothing else. */
function chips(
  input: HTMLInputElement,
  list: HTMLElement,
  key: 'places' | 'crew',
  draw: (text: string) => HTMLElement,
) {
  input.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || input.value === '') return
    event.preventDefault()
    state[key] = [...state[key], input.value]
    list.append(draw(input.value))
    input.value = ''
  })
}
chips(at('site-chips'), at('made'), 'places', (text) => {
  const chip = document.createElement('span')
  chip.innerHTML = '<b></b><button type="button">×</button>'
  chip.querySelector('b')!.textContent = text
  chip.querySelector('button')!.addEventListener('click', () => {
    state.places = state.places.filter((each) => each !== text)
    chip.remove()
  })
  return chip
})
chips(at('crew'), at('crewlist'), 'crew', (text) => {
  const item = document.createElement('li')
  item.textContent = text
  item.addEventListener('click', () => {
    state.crew = state.crew.filter((each) => each !== text)
    item.remove()
  })
  return item
})
at<HTMLInputElement>('plain').addEventListener('input', () => (state.notes = at<HTMLInputElement>('plain').value))

/** A list that a box opens; gone again after a choice. */
function opens(box: HTMLElement, options: readonly string[], choose: (option: string) => void): () => void {
  return () => {
    document.querySelector('.pop')?.remove()
    const list = document.createElement('ul')
    list.className = 'pop'
    list.setAttribute('role', 'listbox')
    const { left, bottom } = box.getBoundingClientRect()
    Object.assign(list.style, { left: `${left + scrollX}px`, top: `${bottom + scrollY}px` })
    for (const option of options) {
      const item = document.createElement('li')
      item.setAttribute('role', 'option')
      item.textContent = option
      let marked = false
      // A choice is what the pointer has moved over.
      item.addEventListener('pointermove', () => (marked = true))
      item.addEventListener('click', () => {
        if (marked) choose(option)
        list.remove()
      })
      list.append(item)
    }
    document.body.append(list)
  }
}
const range = at('range')
range.addEventListener(
  'click',
  opens(range, ['wide range', 'middle range'], (option) => {
    state.range = option
    range.textContent = option
  }),
)
const zone = at('zone')
zone.addEventListener(
  'click',
  opens(zone, ['Zone 4', 'Zone 5'], (option) => {
    state.zone = option
    at('zonetext').textContent = option
  }),
)
const wind = at('wind')
const openWind = opens(wind, ['calm', 'light', 'strong'], (option) => {
  state.wind = option
  wind.textContent = option
})
wind.addEventListener('pointermove', () => {
  if (!document.querySelector('.pop')) openWind()
})
const turnFan = () => {
  state.fan = !state.fan
  at('fan').setAttribute('aria-checked', String(state.fan))
}
at('fandrawing').addEventListener('click', turnFan)
at('fan').addEventListener('click', turnFan)

// What is typed stays right in a notation of the page's own.
const permit = at<HTMLInputElement>('permit')
permit.addEventListener('change', () => {
  permit.value = permit.value.toUpperCase()
  state.permit = permit.value
})
const cost = at<HTMLInputElement>('cost')
cost.addEventListener('change', () => {
  state.cost = Number(cost.value.replaceAll(/[^\d.]/g, ''))
  cost.value = `$${state.cost.toLocaleString('en-US')}.00`
})
