import { compareRetest, type Compared, type FigureCompared, type ReviewResult } from '../../book/review.ts'
import type { ReviewNotes } from '../../book/review-schema.ts'
import { decimalsOf, wordOf } from '../../reduce/figures/index.ts'
import { symbol } from '../../units/symbol.ts'
import { readNumber } from '../../units/read.ts'
import { write } from '../../units/write.ts'
import { PageIcon } from '../parts/page-icons.tsx'
import { asRead } from '../../results/in-locale.ts'
import { TextField } from './field.tsx'
import { wording } from '../parts/wording.ts'
import { roleWords } from '../../words/names.ts'
import { say, shown } from '../../words/say.ts'

interface Props {
  result: ReviewResult
  notes: ReviewNotes
  onEdit: (patch: Partial<ReviewNotes>) => void
}

/** Every figure of the file beside what its readings give here, and beside a re-test. */
export function ReviewFigures({ result, notes, onEdit }: Props) {
  return (
    <section>
      <h3>{say`Figures`}</h3>
      <div class="fields">
        <TextField
          label={say`A re-test is fine up to, %`}
          mode="decimal"
          value={notes.fine}
          hint={say`common practice, no source`}
          onInput={(fine) => onEdit({ fine })}
        />
        <TextField
          label={say`A fault above, %`}
          mode="decimal"
          value={notes.fault}
          hint={say`common practice, no source`}
          onInput={(fault) => onEdit({ fault })}
        />
      </div>
      <div class="scroll">
        <table class="t ls">
          <thead>
            <tr>
              <th scope="col">{say`Figure`}</th>
              <th scope="col" class="num">
                {say`In the file`}
              </th>
              <th scope="col" class="num">
                {say`Here`}
              </th>
              <th scope="col">{say`Unit`}</th>
              <th scope="col">{say`Result`}</th>
              <th scope="col">{say`Re-test`}</th>
            </tr>
          </thead>
          <tbody>
            {result.figures.map((figure) => {
              const key = `${figure.test}/${figure.figure}`
              return (
                <tr key={key}>
                  <th scope="row">
                    {wordOf(figure.figure, figure.unit)} <small class="q">{roleWords(figure.test)}</small>
                  </th>
                  <td class="num">{written(figure, figure.recorded?.value)}</td>
                  <td class="num">{written(figure, figure.here?.value)}</td>
                  <td>{symbol(figure.unit)}</td>
                  <td>
                    <ComparedWords of={figure.result} />
                  </td>
                  <td>
                    <input
                      class="in"
                      inputMode="decimal"
                      aria-label={say`Re-test, ${wordOf(figure.figure, figure.unit)}, ${roleWords(figure.test)}`}
                      value={notes.retest[key] ?? ''}
                      onInput={(event) => onEdit({ retest: { ...notes.retest, [key]: event.currentTarget.value } })}
                    />
                    <Retest figure={figure} notes={notes} typed={notes.retest[key] ?? ''} />
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      <Checks result={result} />
    </section>
  )
}

function written({ figure, unit }: FigureCompared, value: number | undefined): string {
  return value === undefined ? '' : asRead(write(value, { decimals: decimalsOf(figure, unit) }))
}

export function ComparedWords({ of }: { of: Compared }) {
  return of === 'reproduced' ? (
    <span class="st x">
      <PageIcon name="entered" />
      <span>{say`reproduced`}</span>
    </span>
  ) : (
    <span class="st bad">
      <PageIcon name="bad" />
      <span>{shown(of)}</span>
    </span>
  )
}

function Retest({ figure, notes, typed }: { figure: FigureCompared; notes: ReviewNotes; typed: string }) {
  if (!typed.trim() || !figure.recorded) return null
  const numbers = [typed, notes.fine, notes.fault].map((text) => readNumber(text))
  const [value, fine, fault] = numbers
  if (typeof value !== 'number' || typeof fine !== 'number' || typeof fault !== 'number') {
    return <small class="st doubt">{say`Type plain numbers.`}</small>
  }
  try {
    const { percent, band } = compareRetest(figure.recorded.value, value, { fine, fault })
    const tone = band === 'fine' ? 'q' : band === 'fault' ? 'st bad' : 'st doubt'
    return (
      <small class={tone}>
        {asRead(write(percent, { decimals: 1 }))} %, {shown(band)}
      </small>
    )
  } catch (error) {
    return <small class="st doubt">{wording(error)}</small>
  }
}

function Checks({ result }: { result: ReviewResult }) {
  return (
    <details class="sec">
      <summary>
        <h4>{say`Checks run again`}</h4>{' '}
        <span class="q">
          {say`${result.checks.filter(({ same }) => same).length} of ${result.checks.length} as in the file`}
        </span>
      </summary>
      <ul class="plain">
        {result.checks.map(({ test, id, text, recorded, here, same }) => (
          <li key={`${test}/${id}`}>
            <span>
              {asRead(text)} <small class="q">{roleWords(test)}</small>
            </span>
            <span class={same && here === 'good' ? 'q' : 'st doubt'}>
              {same ? shown(here) : say`${shown(recorded)} in the file, ${shown(here)} here`}
            </span>
          </li>
        ))}
      </ul>
    </details>
  )
}
