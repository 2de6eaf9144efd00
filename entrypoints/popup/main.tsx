import { render } from 'preact'
import '../../lib/view/tokens.css'
import '../../lib/view/base.css'
import '../../lib/view/paper.css'
import '../../lib/view/figure/figure.css'
import '../../lib/view/calculator/calculator.css'
import '../../lib/view/calculator/cells.css'
import { Calculator } from '../../lib/view/calculator/calculator.tsx'
import { speak } from '../../lib/words/page.ts'
import './popup.css'

speak(document)
const root = document.getElementById('root')!
root.replaceChildren()
render(<Calculator onSent={() => close()} />, root)
