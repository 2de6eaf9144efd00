import { useState } from 'preact/hooks'
import { say } from '../../words/say.ts'
import { Icon } from '../parts/icons.tsx'

const line = (label: string, name: string, type = 'text') => ({ label, name, type })

/** A form as a program's portal has them, of an invented county: nothing that is typed here goes anywhere. */
export function PracticeForm() {
  const [told, setTold] = useState('')
  const first = [
    line(say`Street address`, 'street'),
    line(say`Permit number`, 'permit'),
    line(say`Conditioned volume, ft³`, 'volume', 'number'),
    line(say`Floor area, ft²`, 'area', 'number'),
  ]
  const second = [
    line(say`Date of test`, 'date', 'date'),
    line(say`CFM50, whole number`, 'cfm50', 'number'),
    line(say`ACH50, two decimals`, 'ach50'),
    line(say`Effective leakage area, in²`, 'ela'),
  ]
  const field = ({ label, name, type }: ReturnType<typeof line>) => (
    <label key={name}>
      {label}
      <input name={name} type={type as 'text'} {...(type === 'number' && { step: 'any' })} autocomplete="off" />
    </label>
  )
  return (
    <main class="practice">
      <header>
        <p class="q">
          <Icon name="mark" /> {say`A form to practise on. Nothing typed here leaves this page.`}
        </p>
        <h1>{say`Form LC-7, practice sheet`}</h1>
        <p>
          {say`Open Gapsum from the toolbar on this page, choose “Map this page” and bind the controls to figures of the demo job. Next time “Fill this page” shows the plan.`}
        </p>
      </header>
      <form
        onSubmit={(event) => {
          event.preventDefault()
          setTold(say`This is where you would submit. The practice form sends nothing.`)
        }}
      >
        <fieldset>
          <legend>{say`Building`}</legend>
          {first.map(field)}
        </fieldset>
        <fieldset>
          <legend>{say`Test after the work`}</legend>
          {second.map(field)}
          <label>
            {say`Direction`}
            <select name="direction">
              <option value="">{say`choose`}</option>
              <option>{say`Depressurization`}</option>
              <option>{say`Pressurization`}</option>
            </select>
          </label>
          <div class="choice" role="radiogroup" aria-labelledby="outcome">
            <span id="outcome">{say`Result against the limit`}</span>
            <label>
              <input type="radio" name="outcome" value="pass" /> {say`pass`}
            </label>
            <label>
              <input type="radio" name="outcome" value="fail" /> {say`fail`}
            </label>
          </div>
          <label class="wide">
            {say`Remarks`}
            <textarea name="remarks" rows={3} />
          </label>
        </fieldset>
        <fieldset>
          <legend>{say`Tester`}</legend>
          <label>
            {say`Tester’s name`}
            <input name="tester" autocomplete="off" />
          </label>
          <label>
            {say`Licence number`}
            <input name="licence" autocomplete="off" />
          </label>
          <label class="tick">
            <input type="checkbox" name="certify" /> {say`I certify that these figures are mine`}
          </label>
        </fieldset>
        <button type="submit" class="b first">
          {say`Submit`}
        </button>
        <p role="status">{told}</p>
      </form>
    </main>
  )
}
