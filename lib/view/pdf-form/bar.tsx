import { say } from '../../words/say.ts'
import { Icon } from '../parts/icons.tsx'
import { askForFile } from './choose.tsx'
import { nameFor, type Open, type Ready } from './filing.ts'
import { Tools } from './tools.tsx'

interface BarProps {
  form: Open
  /** The file that the last fill made. */
  ready: Ready | undefined
  /** Something was changed on the page since. */
  stale: boolean
  said: string
  zoom: number
  onZoom: (by: number) => void
  onSave: () => void
  onFile: (file: File) => void
}

/** What became of the fill, and the keys for the file; stays at the top. */
export function Bar({ form, ready, stale, said, zoom, onZoom, onSave, onFile }: BarProps) {
  const { opened, file } = form
  const fit = ready?.fields.filter(({ wanted, held }) => wanted === held && wanted !== '').length ?? 0
  return (
    <Tools name="filebar">
      <div class="row">
        <span class="file" title={file}>
          {file}
        </span>
        <span class="q">
          {opened.pdf.numPages === 1 ? say`1 page` : say`${opened.pdf.numPages} pages`},{' '}
          {opened.fields.length === 1 ? say`1 field` : say`${opened.fields.length} fields`}
        </span>
        <span class="zoom" role="group" aria-label={say`Zoom`}>
          <button type="button" class="b low" aria-label={say`Smaller`} onClick={() => onZoom(-1)}>
            −
          </button>
          <span class="num" role="status">
            {say`${Math.round(zoom * 100)} %`}
          </span>
          <button type="button" class="b low" aria-label={say`Larger`} onClick={() => onZoom(1)}>
            +
          </button>
        </span>
        <button type="button" class="b low" onClick={() => askForFile(onFile)}>
          {say`Another file`}
        </button>
        <button type="button" class={ready ? 'b first' : 'b'} onClick={onSave}>
          {say`Save the filled form`}
        </button>
      </div>
      {opened.notes.map((note) => (
        <p key={note} class="note">
          <Icon name="differs" /> {note}
        </p>
      ))}
      <p class="q" role="status">
        {said ||
          (ready && !stale
            ? say`${fit} fields were read back from the new file. Save it as ${ready.name}.`
            : ready
              ? say`Something was changed since the fill. Saving makes a new file of what the page shows now.`
              : say`Open Gapsum from the toolbar to map this form or to fill it from a job. It is saved as ${nameFor(file, '')}.`)}
      </p>
    </Tools>
  )
}
