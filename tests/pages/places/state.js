/* The page's own state: what its script was told by events, keyed by section and field, and how often it was told. */
window.state = {}
window.submitted = 0
window.pageState = () => window.state
window.keep = (key, value) => {
  window.state[key] = value
}
const hear = (event) => {
  const control = event.composedPath()[0]
  const key = control.dataset?.is
  if (!key) return
  if (control.type === 'checkbox') window.keep(key, control.checked)
  else if (control.type !== 'radio' || control.checked) window.keep(key, control.value)
}
document.addEventListener('input', hear)
document.addEventListener('change', hear)
document.addEventListener('submit', (event) => {
  event.preventDefault()
  window.submitted += 1
})
