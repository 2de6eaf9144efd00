/**
 * The office's own script. Its model is built from events alone, never read back from the controls, so that a control
 * whose text changed without the page noticing shows up as a difference.
 */

interface PageWindow extends Window {
  pageState: () => Record<string, string | boolean>
  submitted: number
}

const page = window as unknown as PageWindow
const form = document.querySelector('form')!
const model: Record<string, string | boolean> = {}
const ignored = new Set(['token', 'report'])

type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement

function isControl(target: EventTarget | null): target is Control {
  return (
    target instanceof HTMLInputElement || target instanceof HTMLSelectElement || target instanceof HTMLTextAreaElement
  )
}

for (const control of form.elements)
  if (isControl(control) && !ignored.has(control.name)) {
    if (control.type === 'checkbox') model[control.name] = false
    else if (control.type === 'radio') model[control.name] = ''
    else model[control.name] = control.value
  }

function listen(event: Event): void {
  const control = event.target
  if (!isControl(control) || ignored.has(control.name)) return
  model[control.name] =
    control instanceof HTMLInputElement && control.type === 'checkbox' ? control.checked : control.value
}
form.addEventListener('input', listen)
form.addEventListener('change', listen)

function complaint(name: string): string {
  const text = String(model[name])
  if (text === '') return ''
  if (name.endsWith('cfm50') && !/^\d+$/.test(text)) return 'Enter a whole number, without a comma.'
  if (name.endsWith('cfm50') && (Number(text) < 100 || Number(text) > 25_000))
    return 'Enter a number from 100 to 25000.'
  if (name.endsWith('ach50') && !/^\d+(\.\d{1,2})?$/.test(text)) return 'Enter a number with at most two decimals.'
  if (name === 'zip' && !/^\d{5}(-\d{4})?$/.test(text)) return 'Enter five digits.'
  return ''
}

function check(name: string): string {
  const control = form.elements.namedItem(name)
  const said = complaint(name)
  const place = control instanceof HTMLElement ? control.closest('.field')?.querySelector('.complaint') : null
  if (control instanceof HTMLElement && place instanceof HTMLElement) {
    control.toggleAttribute('aria-invalid', said !== '')
    place.hidden = said === ''
    place.textContent = said
  }
  return said
}
form.addEventListener('focusout', (event) => {
  if (isControl(event.target)) check(event.target.name)
})

page.submitted = 0
form.addEventListener('submit', async (event) => {
  page.submitted += 1
  event.preventDefault()
  const wrong = Object.keys(model).filter((name) => check(name) !== '')
  const status = form.querySelector('.saved')!
  if (wrong.length > 0) {
    status.textContent = 'Some answers need a look.'
    return
  }
  await fetch(location.pathname, { method: 'POST', body: JSON.stringify(model) })
  status.textContent = 'Saved.'
})

page.pageState = () => structuredClone(model)
