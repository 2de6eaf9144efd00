import { FigureRow, type FigureLine } from './figure-row.tsx'
import { say } from '../../words/say.ts'

export interface FigureGroup {
  title: string
  lines: readonly FigureLine[]
}

/** Figures as a paper would set them, under their headings. */
export function FigureTable({ groups }: { groups: readonly FigureGroup[] }) {
  return (
    <table class="t fg">
      <thead>
        <tr>
          <th scope="col">{say`Figure`}</th>
          <th scope="col" class="num">
            {say`Value`}
          </th>
          <th scope="col" class="num pm">
            ± 95 %
          </th>
          <th scope="col" class="un">
            {say`Unit`}
          </th>
          <th scope="col" class="iv-c">
            {say`Limit`}
          </th>
          <th scope="col" class="cpy">
            <span class="vh">{say`Copy`}</span>
          </th>
        </tr>
      </thead>
      {groups.map((group) => (
        <tbody key={group.title}>
          <tr class="gr">
            <th scope="rowgroup" colSpan={6}>
              {group.title}
            </th>
          </tr>
          {group.lines.map((line) => (
            <FigureRow key={line.id} line={line} />
          ))}
        </tbody>
      ))}
    </table>
  )
}
