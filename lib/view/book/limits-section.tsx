import { publishedLimits, type Limit } from '../../limits/index.ts'
import { symbol } from '../../units/symbol.ts'

const groups: readonly (readonly [Limit['subject'], string])[] = [
  ['enclosure', 'Houses and buildings'],
  ['ducts', 'Ducts'],
]

const confidence: Record<Limit['confidence'], string> = {
  read: 'read in a public copy or guide',
  'from memory': 'from memory, not looked up',
  own: 'your own',
}

/** The published limits that come with the calculator. */
export function LimitsSection() {
  return (
    <>
      <p class="lead">
        <b>Check the edition your authority enforces, and its local amendments.</b> States, counties and cities change
        these numbers. The calculator compares unrounded figures, and takes a limit of your own in place of any of
        these.
      </p>
      {groups.map(([subject, words]) => (
        <section key={subject} class="group">
          <h2>{words}</h2>
          <div class="scroll">
            <table class="t ls lm">
              <thead>
                <tr>
                  <th scope="col">Edition</th>
                  <th scope="col">Clause</th>
                  <th scope="col" class="num">
                    Limit
                  </th>
                  <th scope="col">For</th>
                  <th scope="col">How sure</th>
                </tr>
              </thead>
              <tbody>
                {publishedLimits
                  .filter((limit) => limit.subject === subject)
                  .map((limit) => (
                    <tr key={limit.id}>
                      <th scope="row">{limit.edition}</th>
                      <td>{limit.clause || <span class="q">none</span>}</td>
                      <td class="num">
                        {limit.comparison === '<' ? 'below ' : ''}
                        <b>{limit.value}</b> {limit.unit === '1/h' ? 'ACH50' : symbol(limit.unit)}
                      </td>
                      <td>{scope(limit)}</td>
                      <td class={limit.confidence === 'read' ? 'q' : 'st doubt'}>
                        {confidence[limit.confidence]}, {limit.checked}
                      </td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </div>
        </section>
      ))}
      {[...new Set(publishedLimits.map(({ caution }) => caution))].map((caution) => (
        <p key={caution} class="q caution">
          {caution}
        </p>
      ))}
    </>
  )
}

function scope({ climateZones, condition, leakage, stages }: Limit): string {
  const zones = climateZones && `zones ${climateZones[0]} to ${climateZones.at(-1)}`
  const kind = leakage && (leakage === 'total' ? 'total leakage' : 'leakage to outside')
  return [zones, kind, stages?.join(', '), condition].filter(Boolean).join('; ')
}
