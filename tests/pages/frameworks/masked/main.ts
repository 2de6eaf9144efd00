/** Fields that build their value from what is typed, each in its own way; the model is what their handlers took. */
document.body.innerHTML = `
  <form>
    <label>CFM50 <input id="flow" inputmode="numeric"></label>
    <label>Test date <input id="date" placeholder="MM/DD/YYYY"></label>
    <label>Phone <input id="phone"></label>
    <label>Volume <input id="volume"></label>
    <label>Licence <input id="licence"></label>
    <label>ACH50 <input id="ach" inputmode="decimal"></label>
    <label>Temperature <input id="temperature"></label>
  </form>`
const model: Record<string, string> = {}
window.pageState = () => ({ ...model })
const by = (id: string) => document.getElementById(id) as HTMLInputElement
const take = (input: HTMLInputElement, value: string) => {
  input.value = value
  model[input.id] = value
}

by('flow').addEventListener('input', () => {
  take(
    by('flow'),
    by('flow')
      .value.replaceAll(/\D/g, '')
      .replaceAll(/\B(?=(\d{3})+$)/g, ','),
  )
})
by('date').addEventListener('input', () => {
  const digits = by('date').value.replaceAll(/\D/g, '').slice(0, 8)
  take(by('date'), [digits.slice(0, 2), digits.slice(2, 4), digits.slice(4)].filter(Boolean).join('/'))
})
by('phone').addEventListener('input', () => {
  const [, a = '', b = '', c = ''] = /^(\d{0,3})(\d{0,3})(\d{0,4})/.exec(by('phone').value.replaceAll(/\D/g, '')) ?? []
  take(by('phone'), b ? `(${a}) ${b}${c && `-${c}`}` : a)
})
// Takes keys only: what arrives in another way is put back.
by('volume').addEventListener('keydown', (event) => {
  if (event.key === 'Backspace') take(by('volume'), (model['volume'] ?? '').slice(0, -1))
  else if (/^\d$/.test(event.key)) take(by('volume'), (model['volume'] ?? '') + event.key)
  if (event.key !== 'Tab') event.preventDefault()
})
by('volume').addEventListener('input', () => take(by('volume'), model['volume'] ?? ''))
// Takes only what the browser itself says a hand typed.
by('licence').addEventListener('keydown', (event) => {
  if (event.isTrusted && event.key.length === 1) take(by('licence'), (model['licence'] ?? '') + event.key)
  event.preventDefault()
})
by('licence').addEventListener('input', () => take(by('licence'), model['licence'] ?? ''))
// Rounds when the person leaves.
by('ach').addEventListener('change', () => take(by('ach'), Number(by('ach').value).toFixed(1)))
// Takes nothing over 120.
by('temperature').addEventListener('change', () =>
  take(by('temperature'), String(Math.min(120, Number(by('temperature').value)))),
)
