import { useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import { acceptedTypes, attach } from '../../book/attachments.ts'
import { notesOf } from '../../book/notes.ts'
import type { FillEntry } from '../../book/schema.ts'
import { CorrectionForm } from './correction-form.tsx'
import { FollowUpForm } from './follow-up-form.tsx'
import { NoteSays } from './note-detail.tsx'
import { kindWords } from './note-words.ts'
import { hashOf } from './route.ts'
import { Said, useSaid } from './said.tsx'
import { useLive } from './use-live.ts'
import { dayAndYear, time } from './wording.ts'
import { say } from '../../words/say.ts'

/** What came after a fill: notes about it, and the ways to add one. */
export function EntryNotes({ entry }: { entry: FillEntry }) {
  const notes = useLive(() => notesOf(entry), ['entries'], entry.hash)
  const [form, setForm] = useState<'' | 'follow-up' | 'correction'>('')
  const { said, tell, run } = useSaid()

  const attachFiles = (input: HTMLInputElement) => {
    const files = [...(input.files ?? [])]
    input.value = ''
    run(
      async () => {
        const to = { job: entry.job, of: entry.number, text: '' }
        for (const file of files) await attach(file, to, browser.runtime.getManifest().version)
      },
      () =>
        tell(
          files.length === 1 ? say`${files[0]?.name ?? ''} was attached.` : say`${files.length} files were attached.`,
        ),
    )
  }
  const done = (text: string) => {
    setForm('')
    tell(text)
  }

  return (
    <section class="notes" aria-label={say`What came after entry ${entry.number}`}>
      <h2>{say`What came after`}</h2>
      {notes.value?.length === 0 && <p class="q">{say`Nothing noted yet.`}</p>}
      <ol>
        {notes.value?.map((note) => (
          <li key={note.number}>
            <p class="q">
              <a href={hashOf({ section: 'entries', entry: note.number })}>
                {say`${kindWords[note.kind]}, entry ${note.number}`}
              </a>{' '}
              {dayAndYear(note.at)}, {time(note.at)}
            </p>
            <NoteSays note={note} />
          </li>
        ))}
      </ol>
      {form === 'follow-up' && <FollowUpForm entry={entry} onDone={done} onLeave={() => setForm('')} />}
      {form === 'correction' && <CorrectionForm entry={entry} onDone={done} onLeave={() => setForm('')} />}
      {form === '' && (
        <div class="acts">
          {entry.kind === 'fill' && (
            <button type="button" class="b low" onClick={() => setForm('follow-up')}>
              {say`Note what became of it`}
            </button>
          )}
          <button type="button" class="b low" onClick={() => setForm('correction')}>
            {say`Correct it`}
          </button>
          <label class="b low file">
            {say`Attach photos or PDFs`}
            <input
              type="file"
              class="vh"
              multiple
              accept={acceptedTypes.join(',')}
              onChange={(event) => attachFiles(event.currentTarget)}
            />
          </label>
        </div>
      )}
      <Said said={said} />
    </section>
  )
}
