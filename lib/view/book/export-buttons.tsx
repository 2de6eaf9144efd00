import { useState } from 'preact/hooks'
import { csvParts } from '../../book/csv.ts'
import { entriesShown, entriesForwards } from '../../book/entries.ts'
import { fileParts, wholeBook } from '../../book/json.ts'
import type { Filter } from '../../book/rows.ts'
import { hashOf } from './route.ts'
import { csvType, download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { useDismiss } from './use-dismiss.ts'
import { wording } from './wording.ts'
import { say } from '../../words/say.ts'

/** Files of what is shown, or of everything. */
export function ExportButtons({ filter }: { filter: Filter }) {
  const menu = useDismiss()
  const [said, setSaid] = useState('')
  const filtered = Object.values(filter).some(Boolean)

  const save = (name: string, extension: 'csv' | 'json', parts: () => AsyncIterable<string>) => async () => {
    setSaid(say`writing the file`)
    try {
      await download(fileName(name, extension), extension === 'csv' ? csvType : jsonType, parts())
      setSaid('')
    } catch (error) {
      setSaid(say`No file was written: ${wording(error)}`)
    }
    menu.current?.removeAttribute('open')
  }

  return (
    <details class="menu" ref={menu}>
      <summary class="b">{say`Export`}</summary>
      <div class="items">
        {filtered && (
          <>
            <p class="q">{say`What is found, on every page`}</p>
            <button type="button" class="b low" onClick={save('entries', 'csv', () => csvParts(entriesShown(filter)))}>
              {say`Table (CSV)`}
            </button>
            <button
              type="button"
              class="b low"
              onClick={save('entries', 'json', () => fileParts({}, entriesShown(filter)))}
            >
              {say`Entries (JSON)`}
            </button>
          </>
        )}
        <p class="q">{say`Everything`}</p>
        <button type="button" class="b low" onClick={save(say`all entries`, 'csv', () => csvParts(entriesForwards()))}>
          {say`Table of all entries (CSV)`}
        </button>
        <button type="button" class="b low" onClick={save('book', 'json', wholeBook)}>
          {say`Whole book (JSON)`}
        </button>
        <p class="q">
          {say`These files hold addresses, names and readings as they are, not encrypted. A backup with a passphrase is made under `}
          <a href={hashOf({ section: 'settings' })}>{say`Settings`}</a>.
        </p>
        <p role="status">{said}</p>
      </div>
    </details>
  )
}
