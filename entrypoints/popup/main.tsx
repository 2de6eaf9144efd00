import { render } from 'preact'
import '../../lib/view/paper.css'
import '../../lib/view/figure/figure.css'
import '../../lib/view/calculator/calculator.css'
import '../../lib/view/calculator/cells.css'
import { Calculator } from '../../lib/view/calculator/calculator.tsx'
import { speak } from '../../lib/words/page.ts'

speak(document)
render(<Calculator onSent={() => close()} />, document.getElementById('root')!)
