import { readRanges } from '../../job/ranges.ts'
import type { Device } from '../../job/schema.ts'
import { Icon } from '../parts/icons.tsx'
import { Finding } from './finding.tsx'
import { say } from '../../words/say.ts'

export type DeviceRange = Device['ranges'][number]

interface Props {
  class: string
  device: Device
  columns: readonly (readonly [keyof DeviceRange, string])[]
  onEdit: (row: number, patch: Partial<DeviceRange>) => void
  onDelete: (row: number) => void
}

const idOf = (path: string) => `found-${path.replaceAll('.', '-')}`

/** The ranges of a device, a row each, to type into; what is wrong with a cell stands below. */
export function RangesTable({ class: name, device, columns, onEdit, onDelete }: Props) {
  const names = new Set(device.ranges.map((range) => range.name.trim()))
  const wrong = readRanges(device, { flow: device.flowUnit }, names).problems.filter(
    ({ severity }) => severity === 'bad',
  )
  const foundAt = (row: number, key: keyof DeviceRange) => {
    const path = `device.ranges.${row}.${key}`
    return wrong.some((one) => one.path === path) ? { 'aria-invalid': true, 'aria-describedby': idOf(path) } : {}
  }

  return (
    <>
      <table class={`t ${name}`}>
        <caption class="vh">{say`Ranges of the device`}</caption>
        <thead>
          <tr>
            {columns.map(([key, words]) => (
              <th key={key} class={key === 'name' ? '' : 'num'} scope="col">
                {words}
              </th>
            ))}
            <th scope="col">
              <span class="vh">{say`Delete`}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {device.ranges.map((range, row) => (
            // oxlint-disable-next-line react/no-array-index-key -- a range has no id of its own and keeps its place
            <tr key={row}>
              {columns.map(([key, words]) => (
                <td key={key} data-head={words}>
                  <input
                    class="in"
                    inputMode={key === 'name' ? 'text' : 'decimal'}
                    maxLength={100}
                    aria-label={say`${words}, range ${row + 1}`}
                    {...foundAt(row, key)}
                    value={range[key]}
                    onInput={(event) => onEdit(row, { [key]: event.currentTarget.value })}
                  />
                </td>
              ))}
              <td>
                <button
                  type="button"
                  class="ib"
                  aria-label={say`Delete range ${range.name || row + 1}`}
                  onClick={() => onDelete(row)}
                >
                  <Icon name="x" />
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {wrong.map(({ path, message }) => (
        <Finding key={path} id={idOf(path)} text={message} />
      ))}
    </>
  )
}
