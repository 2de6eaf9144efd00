/** @jsxImportSource react */
import { useState, type ChangeEvent } from 'react'
import { createRoot } from 'react-dom/client'

/** A form in which the page's own state, not the control, is the truth. */
interface State {
  street: string
  flow: string
  date: string
  comments: string
  range: string
  result: string
  sealed: boolean
  digits: string
  fixed: string
}

declare global {
  interface Window {
    state: State
  }
}

function Page() {
  const [state, setState] = useState<State>({
    street: '',
    flow: '',
    date: '',
    comments: '',
    range: '',
    result: '',
    sealed: false,
    digits: '',
    fixed: 'kept',
  })
  window.state = state
  window.pageState = () => state
  const change =
    (name: keyof State) => (event: ChangeEvent<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>) =>
      setState((old) => ({ ...old, [name]: event.target.value }))
  return (
    <form>
      <label htmlFor="street">Street address</label>
      <input id="street" value={state.street} onChange={change('street')} />
      <label htmlFor="flow">CFM50</label>
      <input id="flow" type="number" value={state.flow} onChange={change('flow')} />
      <label htmlFor="date">Test date</label>
      <input id="date" type="date" value={state.date} onChange={change('date')} />
      <label htmlFor="comments">Comments</label>
      <textarea id="comments" value={state.comments} onChange={change('comments')} />
      <label htmlFor="range">Range</label>
      <select id="range" value={state.range} onChange={change('range')}>
        <option value="">Select</option>
        <option value="a">wide</option>
        <option value="b">middle</option>
      </select>
      <fieldset>
        <legend>Result</legend>
        {['Pass', 'Fail'].map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="result"
              value={each}
              checked={state.result === each}
              onChange={change('result')}
            />
            {each}
          </label>
        ))}
      </fieldset>
      <label>
        <input
          type="checkbox"
          id="sealed"
          checked={state.sealed}
          onChange={(event) => setState((old) => ({ ...old, sealed: event.target.checked }))}
        />
        Attic sealed
      </label>
      <label htmlFor="digits">Digits only</label>
      <input
        id="digits"
        value={state.digits}
        onChange={(event) => setState((old) => ({ ...old, digits: event.target.value.replaceAll(/\D/g, '') }))}
      />
      <label htmlFor="fixed">Fixed</label>
      <input id="fixed" value={state.fixed} onChange={() => undefined} />
    </form>
  )
}

const root = document.createElement('main')
document.body.append(root)
createRoot(root).render(<Page />)
