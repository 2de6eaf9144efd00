/**
 * Controls drawn after the patterns of the WAI-ARIA Authoring Practices Guide, without a library: select-only combobox,
 * editable combobox, listbox, radio group, checkbox, switch, slider, spin button, date picker dialog; and the ways around
 * them: a list elsewhere in the document, one that mounts what is in view, one that waits for a request, dates in boxes.
 */
const state: Record<string, unknown> = { submitted: 0, places: ['Attic'], floors: 1, rooms: 0 }
window.pageState = () => ({ ...state })

document.body.innerHTML = `
  <style>
    [role=listbox] { border: 1px solid; max-height: 120px; overflow: auto; width: 200px; background: white }
    [role=combobox], [role=slider], [role=spinbutton], [role=switch], [role=checkbox], [role=radio] { display: inline-block; min-width: 40px; border: 1px solid; min-height: 18px }
    .over { position: absolute; width: 18px; height: 18px; opacity: 0 } .look { display: inline-block; width: 18px; height: 18px; border: 1px solid }
    [hidden] { display: none }
  </style>
  <form id="form">
    <div><span id="range-label">Range</span> <div id="range" role="combobox" tabindex="0" aria-haspopup="listbox" aria-expanded="false" aria-controls="range-list" aria-labelledby="range-label range">Choose</div></div>
    <div><label for="town">Town</label> <input id="town" role="combobox" aria-autocomplete="list" aria-expanded="false" aria-controls="town-list"></div>
    <div><span id="crew-label">Crew</span> <button type="button" id="crew" aria-haspopup="listbox" aria-labelledby="crew-label crew">Choose</button></div>
    <div><span id="places-label">Work locations</span> <ul id="places" role="listbox" aria-multiselectable="true" aria-labelledby="places-label"></ul></div>
    <div role="radiogroup" id="result" aria-labelledby="result-label"><h3 id="result-label">Result</h3><span role="radio" tabindex="0" aria-checked="false">Pass</span> <span role="radio" tabindex="-1" aria-checked="false">Fail</span></div>
    <div><span role="checkbox" id="sealed" tabindex="0" aria-checked="false" aria-labelledby="sealed-label"></span> <span id="sealed-label">Attic sealed</span></div>
    <div><button role="switch" id="fan" aria-checked="false" aria-label="Ventilation present">off</button></div>
    <div><button id="wind" aria-pressed="false">Windy</button></div>
    <div><span id="covered-label">Ducts tested</span> <span><input class="over" type="checkbox" id="covered" aria-labelledby="covered-label"><span class="look"></span></span></div>
    <div><span id="floors-label">Stories</span> <span role="slider" id="floors" tabindex="0" aria-valuemin="1" aria-valuemax="4" aria-valuenow="1" aria-labelledby="floors-label">1</span></div>
    <div><span id="rooms-label">Bedrooms</span> <span role="spinbutton" id="rooms" tabindex="0" aria-valuemin="0" aria-valuemax="12" aria-valuenow="0" aria-labelledby="rooms-label">0</span></div>
    <fieldset><legend>Date of permit</legend><label>Month <select id="bm"><option value=""></option><option value="1">January</option><option value="2">February</option></select></label> <label>Day <input id="bd" maxlength="2"></label> <label>Year <input id="by" maxlength="4"></label></fieldset>
    <div><label for="when">Date of test</label> <input id="when" readonly aria-haspopup="dialog" placeholder="MM/DD/YYYY"></div>
    <label>Report <input id="report" type="file"></label>
    <label>Time of test <input id="time" type="time"></label>
    <label>Month of invoice <input id="invoice" type="month"></label>
    <label>Started <input id="started" type="datetime-local"></label>
  </form>`
const by = (id: string) => document.getElementById(id) as HTMLInputElement
by('form').addEventListener('submit', (event) => {
  event.preventDefault()
  state['submitted'] = Number(state['submitted']) + 1
})
for (const id of ['bm', 'bd', 'by', 'time', 'invoice', 'started'])
  by(id).addEventListener('change', () => (state[id] = by(id).value))

/** A list at the end of the document, apart from its control. */
function list(id: string, labels: string[], choose: (label: string) => void): HTMLElement {
  const element = document.createElement('ul')
  element.id = id
  element.setAttribute('role', 'listbox')
  for (const label of labels) {
    const option = document.createElement('li')
    option.setAttribute('role', 'option')
    option.textContent = label
    option.addEventListener('click', () => {
      element.remove()
      choose(label)
    })
    element.append(option)
  }
  document.body.append(element)
  return element
}

by('range').addEventListener('click', () => {
  by('range').setAttribute('aria-expanded', 'true')
  list('range-list', ['wide range', 'middle range', 'narrow range'], (label) => {
    by('range').setAttribute('aria-expanded', 'false')
    by('range').textContent = state['range'] = label
  })
})
// Options come after a request, and only for what was typed.
by('town').addEventListener('input', () => {
  const typed = by('town').value
  setTimeout(() => {
    document.getElementById('town-list')?.remove()
    const found = ['Marrowby', 'Larch Falls', 'Larch Hill'].filter((town) => typed && town.startsWith(typed))
    if (found.length > 0) list('town-list', found, (label) => (by('town').value = state['town'] = label))
  }, 300)
})
by('town').addEventListener('blur', () => setTimeout(() => (by('town').value = String(state['town'] ?? '')), 50))
// Mounts only what is in view.
by('crew').addEventListener('click', () => {
  const element = list('crew-list', [], () => undefined)
  const inner = document.createElement('div')
  inner.style.cssText = 'height: 8000px; position: relative'
  element.append(inner)
  const draw = () => {
    inner.textContent = ''
    const first = Math.floor(element.scrollTop / 20)
    for (let at = first; at < Math.min(400, first + 8); at++) {
      const option = document.createElement('div')
      option.setAttribute('role', 'option')
      option.textContent = `Crew ${at + 1}`
      option.style.cssText = `position: absolute; top: ${at * 20}px; height: 20px`
      option.addEventListener('click', () => {
        by('crew').textContent = state['crew'] = `Crew ${at + 1}`
        element.remove()
      })
      inner.append(option)
    }
  }
  element.addEventListener('scroll', draw)
  draw()
})
for (const label of ['Attic', 'Crawl space', 'Rim joist']) {
  const option = document.createElement('li')
  option.setAttribute('role', 'option')
  option.setAttribute('aria-selected', label === 'Attic' ? 'true' : 'false')
  option.textContent = label
  option.addEventListener('click', () => {
    option.setAttribute('aria-selected', String(option.getAttribute('aria-selected') !== 'true'))
    state['places'] = [...by('places').children]
      .filter((one) => one.getAttribute('aria-selected') === 'true')
      .map((one) => one.textContent)
  })
  by('places').append(option)
}
for (const radio of by('result').querySelectorAll('[role=radio]'))
  radio.addEventListener('click', () => {
    for (const each of by('result').querySelectorAll('[role=radio]'))
      each.setAttribute('aria-checked', String(each === radio))
    state['result'] = radio.textContent
  })
const flip = (id: string, name: string, type: string) =>
  by(id).addEventListener(type, (event) => {
    if (type === 'keydown' && (event as KeyboardEvent).key !== ' ') return
    state[id] = by(id).getAttribute(name) !== 'true'
    by(id).setAttribute(name, String(state[id]))
  })
// Listens to the space bar only, as the pattern asks for at least.
flip('sealed', 'aria-checked', 'keydown')
flip('fan', 'aria-checked', 'click')
flip('wind', 'aria-pressed', 'click')
by('covered').addEventListener('change', () => (state['covered'] = by('covered').checked))
const step = (id: string, keys: [string, string]) =>
  by(id).addEventListener('keydown', ({ key }) => {
    const by1 = key === keys[0] ? 1 : key === keys[1] ? -1 : 0
    const element = by(id)
    const limit = (name: string) => Number(element.getAttribute(name))
    const value = Math.max(limit('aria-valuemin'), Math.min(limit('aria-valuemax'), limit('aria-valuenow') + by1))
    element.setAttribute('aria-valuenow', String(value))
    element.textContent = String(value)
    state[id] = value
  })
step('floors', ['ArrowRight', 'ArrowLeft'])
step('rooms', ['ArrowUp', 'ArrowDown'])

const monthNames = Array.from({ length: 12 }, (_, at) =>
  new Date(Date.UTC(2000, at)).toLocaleDateString('en', { month: 'long', timeZone: 'UTC' }),
)
by('when').addEventListener('click', () => {
  const dialog = document.createElement('div')
  dialog.setAttribute('role', 'dialog')
  let at = 2026 * 12 + 4
  const draw = () => {
    const [year, month] = [Math.floor(at / 12), at % 12]
    dialog.innerHTML = `<button type="button" aria-label="Previous year">«</button><button type="button" aria-label="Previous month">‹</button><h2 aria-live="polite">${monthNames[month]} ${year}</h2><button type="button" aria-label="Next month">›</button>`
    const table = document.createElement('table')
    table.setAttribute('role', 'grid')
    const start = new Date(Date.UTC(year, month, 1)).getUTCDay()
    let row = table.insertRow()
    for (let day = 1 - start; day <= 42 - start; day++) {
      if (row.cells.length === 7) row = table.insertRow()
      const date = new Date(Date.UTC(year, month, day))
      const cell = row.insertCell()
      cell.textContent = String(date.getUTCDate())
      cell.addEventListener('click', () => {
        state['when'] = date.toISOString().slice(0, 10)
        by('when').value = date.toLocaleDateString('en-US', {
          timeZone: 'UTC',
          month: '2-digit',
          day: '2-digit',
          year: 'numeric',
        })
        dialog.remove()
      })
    }
    dialog.append(table)
    const [, previous, next] = dialog.querySelectorAll('button')
    previous?.addEventListener('click', () => (at--, draw()))
    next?.addEventListener('click', () => (at++, draw()))
  }
  draw()
  document.body.append(dialog)
})
by('report').addEventListener('change', async () => {
  const file = by('report').files?.[0]
  state['report'] = file && `${file.name} ${file.type} ${await file.text()}`
})
