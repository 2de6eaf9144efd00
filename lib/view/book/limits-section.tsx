import { listLimits } from '../../book/limits.ts'
import { boundText, publishedLimits, type Limit } from '../../limits/index.ts'
import { symbol } from '../../units/symbol.ts'
import { Trouble } from './field.tsx'
import { KeptLimits } from './kept-limits.tsx'
import { scopeWords } from './scope-words.ts'
import { useLive } from '../parts/use-live.ts'
import { asRead } from '../../results/in-locale.ts'
import { say } from '../../words/say.ts'

const groups: readonly (readonly [Limit['subject'], string])[] = [
  ['enclosure', say`Houses and buildings`],
  ['ducts', say`Ducts`],
]

const sure: Record<Limit['confidence'], string> = {
  read: say`read`,
  secondary: say`from texts that cite it`,
  'from memory': say`from memory`,
  own: say`own`,
}

/** The limits of the owner's own, then the published ones that come with the calculator. */
export function LimitsSection() {
  const own = useLive(listLimits, ['limits'])
  // Nothing is drawn that the list above it would push down a moment later.
  if (!own.value) return <Trouble text={own.trouble} />
  return (
    <>
      {[...new Set(publishedLimits.map(({ caution }) => caution))].map((caution) => (
        <p key={caution} class="lead">
          <b>{caution}</b>
        </p>
      ))}
      <p class="lead">
        {say`States, counties and cities change these numbers. The calculator compares unrounded figures, and takes a limit of your own in place of any of these. “Read”: looked up in a public copy, a state’s adoption or a guide. “From memory”: number or clause was not looked up; do so before you rely on it.`}
      </p>
      <KeptLimits limits={own.value} />
      {groups.map(([subject, words]) => (
        <section key={subject} class="group">
          <h2>{words}</h2>
          <div class="scroll">
            <table class="t ls lm">
              <thead>
                <tr>
                  <th scope="col">{say`Edition`}</th>
                  <th scope="col">{say`Clause`}</th>
                  <th scope="col" class="num">
                    {say`Limit`}
                  </th>
                  <th scope="col">{say`For`}</th>
                  <th scope="col">{say`How sure`}</th>
                </tr>
              </thead>
              <tbody>
                {publishedLimits
                  .filter((limit) => limit.subject === subject)
                  .map((limit) => (
                    <tr key={limit.id}>
                      <th scope="row">{limit.edition}</th>
                      <td>{limit.clause || <span class="q">{say`none`}</span>}</td>
                      <td class="num">
                        {limit.comparison === '<' ? `${say`below`} ` : ''}
                        <b>{asRead(boundText(limit.value))}</b> {limit.unit === '1/h' ? 'ACH50' : symbol(limit.unit)}
                      </td>
                      <td>{scopeWords(limit)}</td>
                      <td>
                        <span class={limit.confidence === 'read' ? 'q' : 'st doubt'}>
                          {sure[limit.confidence]}, {limit.checked}
                        </span>
                      </td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </div>
        </section>
      ))}
    </>
  )
}
