import type { Material } from '../../form/material.ts'
import type { FileSource } from '../../form/fill/file.ts'
import type { Source } from '../../form/schema.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

interface FileFieldProps {
  source: Source | undefined
  material: Material
  onSource: (source: Source) => void
}

const table = { from: 'file', name: 'figures.csv', type: 'text/csv' } as const

/** What goes into a control that takes a file, under a name: all figures and fields of the job, or a report. */
export function FileField({ source, material, onSource }: FileFieldProps) {
  const file = source?.from === 'file' ? source : undefined
  const reports = Object.entries(material.files ?? {}).map(([item, { group, name, type }]): [FileSource, string] => [
    { from: 'file', name, type, item },
    group,
  ])
  const offered: [FileSource, string][] = [[table, ''], ...reports]
  return (
    <>
      <fieldset class="ops">
        <legend class="vh">{say`Which file`}</legend>
        {offered.map(([one, group]) => {
          const on = file !== undefined && file.item === one.item
          return (
            <label key={one.item} class={`op ${on ? 'on' : ''}`}>
              <input type="radio" name="source" checked={on} onChange={() => onSource(one)} />
              <span>
                {one.item === undefined
                  ? say`All figures and fields of the job as a table (CSV)`
                  : group
                    ? say`Report of the test “${roleWords(group)}” (PDF)`
                    : say`Report of all tests, a page each (PDF)`}
              </span>
              <small>{say`Written anew from the job at each fill.`}</small>
            </label>
          )
        })}
      </fieldset>
      {file && (
        <label class="fixed">
          <span class="lab">{say`Name of the file`}</span>
          <input
            class="box"
            value={file.name}
            onInput={(event) => onSource({ ...file, name: event.currentTarget.value })}
          />
        </label>
      )}
    </>
  )
}
