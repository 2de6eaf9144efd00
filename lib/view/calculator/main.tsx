import { render } from 'preact'
import './calculator.css'
import './first-run.css'
import './cells.css'
import './readings.css'
import './touch.css'
import { Calculator } from './calculator.tsx'
import { keepFocus } from '../parts/keep-focus.ts'
import { speak } from './speak.ts'

const root = document.getElementById('root')!
speak(document)
keepFocus()
render(<Calculator {...(root.dataset.beside === undefined ? { onSent: () => close() } : { beside: true })} />, root)
