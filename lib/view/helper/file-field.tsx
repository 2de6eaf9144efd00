import type { Source } from '../../form/schema.ts'
import { say } from '../../words/say.ts'

interface FileFieldProps {
  source: Source | undefined
  onSource: (source: Source) => void
}

const table = { from: 'file', name: 'figures.csv', type: 'text/csv' } as const

/** What goes into a control that takes a file: a table of all figures and fields of the job, under a name. */
export function FileField({ source, onSource }: FileFieldProps) {
  const file = source?.from === 'file' ? source : undefined
  return (
    <>
      <fieldset class="ops">
        <legend class="vh">{say`Which file`}</legend>
        <label class={`op ${file ? 'on' : ''}`}>
          <input type="radio" name="source" checked={file !== undefined} onChange={() => onSource(table)} />
          <span>{say`All figures and fields of the job as a table (CSV)`}</span>
          <small>{say`Written anew from the job at each fill.`}</small>
        </label>
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
