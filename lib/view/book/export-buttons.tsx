import { useRef, useState } from 'preact/hooks'
import { csvParts } from '../../book/csv.ts'
import { entriesShown, type Placed } from '../../book/entries.ts'
import { allEntries, fileParts, wholeBook } from '../../book/json.ts'
import { listOthers } from '../../book/others.ts'
import { everyBook, type Filter } from '../../book/rows.ts'
import { until } from '../../book/stoppable.ts'
import { hashOf } from './route.ts'
import { csvType, download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { Progress } from './progress.tsx'
import { useDismiss } from './use-dismiss.ts'
import { grouped, wording } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** A table that says of each entry which book it stands in. */
async function* tableOf(entries: AsyncIterable<Placed>): AsyncGenerator<string> {
  yield* csvParts(entries, new Map((await listOthers()).map(({ key, name }) => [key, name])))
}

async function* everyEntry(): AsyncGenerator<string> {
  yield* tableOf(allEntries((await listOthers()).map(({ key }) => key)))
}

/** Entries that are found, with the books beside that some of them stand in. */
async function* foundParts(filter: Filter): AsyncGenerator<string> {
  yield* fileParts({ books: await listOthers() }, entriesShown(filter))
}

/** Files of what is shown, or of everything. */
export function ExportButtons({ filter }: { filter: Filter }) {
  const menu = useDismiss()
  const [said, setSaid] = useState('')
  const filtered = Object.entries(filter).some(([name, value]) => value && (name !== 'book' || value !== everyBook))

  const [progress, setProgress] = useState('')
  const stopped = useRef<AbortController>(undefined)

  const tellWritten = (entries: number, of: number) =>
    setProgress(say`${grouped(entries)} of ${grouped(of)} entries are written`)
  const save = (name: string, extension: 'csv' | 'json', parts: () => AsyncIterable<string>) => async () => {
    stopped.current?.abort()
    const { signal } = (stopped.current = new AbortController())
    setSaid('')
    setProgress(say`writing the file`)
    try {
      await download(fileName(name, extension), extension === 'csv' ? csvType : jsonType, until(parts(), signal))
      menu.current?.removeAttribute('open')
    } catch (error) {
      // Another file that was asked for meanwhile has its own words.
      if (stopped.current?.signal !== signal) return
      setSaid(signal.aborted ? say`Stopped. No file was written.` : say`No file was written: ${wording(error)}`)
    }
    if (stopped.current?.signal === signal) setProgress('')
  }

  return (
    <details class="menu" ref={menu}>
      <summary class="b low">{say`Export`}</summary>
      <div class="items">
        {filtered && (
          <>
            <p class="q">{say`What is found, on every page`}</p>
            <button type="button" class="b low" onClick={save('entries', 'csv', () => tableOf(entriesShown(filter)))}>
              {say`Table (CSV)`}
            </button>
            <button type="button" class="b low" onClick={save('entries', 'json', () => foundParts(filter))}>
              {say`Entries (JSON)`}
            </button>
          </>
        )}
        <p class="q">{say`Everything`}</p>
        <button type="button" class="b low" onClick={save(say`all entries`, 'csv', everyEntry)}>
          {say`Table of all entries (CSV)`}
        </button>
        <button type="button" class="b low" onClick={save('book', 'json', () => wholeBook(tellWritten))}>
          {say`Whole book (JSON)`}
        </button>
        <p class="q">
          {say`These files hold addresses, names and readings as they are, not encrypted. A backup with a passphrase is made under `}
          <a href={hashOf({ section: 'settings' })}>{say`Settings`}</a>.
        </p>
        <Progress words={progress} onStop={() => stopped.current?.abort()} />
        <p role="alert">{said}</p>
      </div>
    </details>
  )
}
