/** Dates: typed into a box that writes the text itself, in sections that listen late, in boxes named by the whole, by a button. */
import { state } from './state.ts'

function label(text: string, ...inside: HTMLElement[]): HTMLElement {
  const around = document.createElement('div')
  const span = document.createElement('span')
  span.textContent = text
  span.id = `label-${text.toLowerCase().replaceAll(' ', '-')}`
  around.append(span, ...inside)
  return around
}

/** Takes each key from `beforeinput` and writes the text itself. */
function typedDate(): HTMLElement {
  const input = document.createElement('input')
  input.placeholder = 'MM/DD/YYYY'
  input.setAttribute('aria-label', 'Date of inspection')
  let digits = ''
  input.addEventListener('beforeinput', (event) => {
    event.preventDefault()
    if (event.inputType.startsWith('delete')) digits = ''
    else if (/^\d$/.test(event.data ?? '') && digits.length < 8) digits += event.data
    input.value = [digits.slice(0, 2), digits.slice(2, 4), digits.slice(4)].filter(Boolean).join('/')
    state.inspected = input.value
  })
  input.addEventListener('input', () => {
    // What did not come by a key of its own is not kept.
    input.value = state.inspected
  })
  return label('', input)
}

/** Sections that listen to keys only a moment after they got the focus. */
function sections(): HTMLElement {
  const group = document.createElement('div')
  group.setAttribute('role', 'group')
  group.setAttribute('aria-labelledby', 'label-date-sealed')
  const held: Record<string, string> = { month: '', day: '', year: '' }
  for (const [part, length] of [
    ['month', 2],
    ['day', 2],
    ['year', 4],
  ] as const) {
    const section = document.createElement('span')
    section.tabIndex = 0
    section.setAttribute('role', 'spinbutton')
    section.setAttribute('aria-label', part)
    section.textContent = part
    let ready = false
    let typed = ''
    section.addEventListener('focus', () => {
      typed = ''
      setTimeout(() => (ready = true), 30)
    })
    section.addEventListener('blur', () => (ready = false))
    section.addEventListener('keydown', ({ key }) => {
      if (!ready || !/^\d$/.test(key)) return
      typed = (typed + key).slice(-length)
      held[part] = typed
      section.textContent = typed
      section.setAttribute('aria-valuenow', String(Number(typed)))
      const { year, month, day } = held
      state.sealed = year?.length === 4 && month && day ? `${year}-${month}-${day}` : ''
    })
    group.append(section, ' ')
  }
  return label('Date sealed', group)
}

/** Three boxes, each called by the whole date. */
function boxes(): HTMLElement {
  const group = document.createElement('fieldset')
  group.innerHTML = '<legend>Date the home was tested</legend>'
  for (const part of ['Month', 'Day', 'Year']) {
    const input = document.createElement('input')
    input.name = `d-${part}`
    input.size = 4
    input.setAttribute('aria-label', 'Date the home was tested')
    group.append(input)
  }
  group.addEventListener('input', () => {
    const [month, day, year] = [...group.querySelectorAll('input')].map(({ value }) => value.padStart(2, '0'))
    state.tested = Number(year) ? `${year}-${month}-${day}` : ''
  })
  return group
}

/** A button that says only whether its calendar is open. */
function button(): HTMLElement {
  const opener = document.createElement('button')
  opener.type = 'button'
  opener.setAttribute('aria-expanded', 'false')
  opener.setAttribute('aria-labelledby', 'label-date-of-invoice')
  opener.textContent = 'Pick a date'
  let [year, month] = [2026, 3]
  const draw = (calendar: HTMLElement) => {
    const name = new Date(Date.UTC(year, month - 1, 1)).toLocaleDateString('en', { month: 'long', timeZone: 'UTC' })
    calendar.innerHTML = `<p><button type="button" aria-label="Previous month">‹</button> ${name} ${year} <button type="button" aria-label="Next month">›</button></p><table></table>`
    const [back, on] = calendar.querySelectorAll('button')
    const turn = (by: number) => () => {
      const next = year * 12 + month - 1 + by
      ;[year, month] = [Math.floor(next / 12), (next % 12) + 1]
      draw(calendar)
    }
    back!.addEventListener('click', turn(-1))
    on!.addEventListener('click', turn(1))
    const row = calendar.querySelector('table')!.insertRow()
    for (let day = 1; day <= new Date(Date.UTC(year, month, 0)).getUTCDate(); day++) {
      const cell = row.insertCell()
      cell.textContent = String(day)
      cell.addEventListener('click', () => {
        state.invoiced = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
        opener.textContent = `${name} ${day}, ${year}`
        opener.setAttribute('aria-expanded', 'false')
        calendar.remove()
      })
    }
  }
  opener.addEventListener('click', () => {
    opener.setAttribute('aria-expanded', 'true')
    const calendar = document.createElement('div')
    calendar.className = 'pop'
    draw(calendar)
    document.body.append(calendar)
  })
  return label('Date of invoice', opener)
}

// The form is there once the page has drawn it.
queueMicrotask(() => document.querySelector('form')?.append(typedDate(), sections(), boxes(), button()))
