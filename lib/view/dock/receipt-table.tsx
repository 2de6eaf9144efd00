import { Fragment } from 'preact'
import type { ReceiptLine } from '../../form/schema.ts'
import { LineNumber } from './line-number.tsx'
import { SectionRow } from './section-row.tsx'
import { Status } from './status.tsx'
import { tickWords } from './tick-words.ts'
import { say } from '../../words/say.ts'

interface ReceiptTableProps {
  lines: readonly ReceiptLine[]
  /** Bindings whose control is somewhere on the page. */
  placed?: readonly string[]
}

/** Outcomes per binding, in the order of the plan. What matches recedes. */
export function ReceiptTable({ lines, placed }: ReceiptTableProps) {
  return (
    <table class="t plan">
      <thead>
        <tr>
          <th class="no">
            <span class="vh">{say`Number`}</span>
          </th>
          <th>{say`Control`}</th>
          <th>{say`Intended`}</th>
          <th>{say`Read back`}</th>
          <th>{say`Outcome`}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line, index) => (
          <Fragment key={line.binding}>
            <SectionRow of={line} before={lines[index - 1]} columns={5} />
            <tr class={line.outcome === 'entered' ? 'settled' : 'look'}>
              <td class="no">
                <LineNumber
                  number={index + 1}
                  control={line.control}
                  placed={placed?.find((binding) => binding === line.binding)}
                />
              </td>
              <th scope="row">
                {line.control}
                {line.outcome === 'entered' && line.note && <small class="why">{line.note}</small>}
              </th>
              <td class="tx" data-head="intended">
                {tickWords(line.intended) || <span class="q sans">{say`empty`}</span>}
              </td>
              <td class="nw" data-head="read back">
                {tickWords(line.readBack) || <span class="q sans">{say`empty`}</span>}
              </td>
              <td>
                <Status of={line.outcome} />
              </td>
            </tr>
          </Fragment>
        ))}
      </tbody>
    </table>
  )
}
