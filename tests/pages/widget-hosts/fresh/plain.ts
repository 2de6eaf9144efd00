import type { Outcome } from 'gapsum'
import 'gapsum'

const widget = document.createElement('gapsum-widget')
widget.id = 'w'
widget.names = { 'air-changes-50': { name: 'ach50', decimals: 2 } }
widget.addEventListener('gapsum-report', ({ detail }) => {
  const found: Outcome = detail
  document.getElementById('heard')!.textContent = found.texts['ach50'] ?? ''
})
// @ts-expect-error: units are ip or si
widget.units = 'metric'
widget.units = 'ip'
document.getElementById('app')!.append(widget)
