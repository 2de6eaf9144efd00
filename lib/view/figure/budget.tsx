import { partWords } from '../../reduce/budget.ts'
import type { BudgetPart } from '../../reduce/report.ts'
import { short } from '../../reduce/say.ts'
import { asRead } from '../../results/in-locale.ts'
import { say } from '../../words/say.ts'

/** The parts of an uncertainty: how large each is, and how much of the variance it makes up. */
export function Budget({ parts }: { parts: readonly BudgetPart[] }) {
  return (
    <table class="t bud">
      <caption>{say`Parts of the uncertainty`}</caption>
      <thead>
        <tr>
          <th scope="col">{say`From`}</th>
          <th scope="col" class="num">{say`Standard uncertainty`}</th>
          <th scope="col" class="num">{say`Share of the variance`}</th>
        </tr>
      </thead>
      <tbody>
        {parts.map(({ part, u, share }) => (
          <tr key={part}>
            <th scope="row">{partWords(part)}</th>
            <td class="num">{asRead(`${short(100 * u, 2)} %`)}</td>
            <td class="num">{share < 0.005 ? say`under 1 %` : `${Math.round(100 * share)} %`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
