import { render } from 'preact'

render(<p>Gapsum</p>, document.getElementById('root')!)
