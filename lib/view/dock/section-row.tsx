/** The heading of a page's section in a table of its controls, above the first that stands under it. */

interface Sectioned {
  section: string
}

interface Shown {
  of: Sectioned
  before: Sectioned | undefined
  columns: number
}

export function SectionRow({ of: { section }, before, columns }: Shown) {
  if (section === '' || section === before?.section) return null
  return (
    <tr class="gr">
      <th colSpan={columns} scope="colgroup">
        {section}
      </th>
    </tr>
  )
}
