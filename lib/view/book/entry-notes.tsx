import { useEffect, useState } from 'preact/hooks'
import browser from 'webextension-polyfill'
import { acceptedTypes, attach } from '../../book/attachments.ts'
import { notesOf } from '../../book/notes.ts'
import type { FillEntry } from '../../book/schema.ts'
import { CorrectionForm, correctionOf } from './correction-form.tsx'
import { FollowUpForm, followUpOf } from './follow-up-form.tsx'
import { dropForm, readForm } from './form-draft.ts'
import { NoteSays } from './note-detail.tsx'
import { kindWords } from './note-words.ts'
import { hashOf } from './route.ts'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { dayAndYear, time } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

const keptAs = { 'follow-up': followUpOf, correction: correctionOf } as const
type Form = keyof typeof keptAs

/** The form that is open about an entry. One that was typed in and neither sent off nor left opens by itself. */
function useForms(entry: FillEntry) {
  const [state, setState] = useState<{ of: string; form: Form | ''; begun?: object | undefined }>()
  const now = state?.of === entry.hash ? state : undefined

  useEffect(() => {
    let gone = false
    const look = async () => {
      for (const form of ['follow-up', 'correction'] as const) {
        const begun = await readForm(keptAs[form](entry))
        // Somebody may have opened one meanwhile.
        if (begun && !gone) return setState((was) => (was?.of === entry.hash ? was : { of: entry.hash, form, begun }))
      }
    }
    void look()
    return () => {
      gone = true
    }
  }, [entry.hash])

  return {
    form: now?.form ?? '',
    begun: now?.begun,
    open: (form: Form) => setState({ of: entry.hash, form }),
    close: () => {
      if (now?.form) dropForm(keptAs[now.form](entry))
      setState({ of: entry.hash, form: '' })
    },
  } as const
}

/** What came after a fill: notes about it, and the ways to add one. A book beside can only be read. */
export function EntryNotes({ entry, book = '' }: { entry: FillEntry; book?: string }) {
  const notes = useLive(() => notesOf(entry, book), ['entries'], `${book} ${entry.hash}`)
  const { form, begun, open, close } = useForms(entry)
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
    close()
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
              <a href={hashOf({ section: 'entries', entry: note.number, book })}>
                {say`${kindWords[note.kind]}, entry ${note.number}`}
              </a>{' '}
              {dayAndYear(note.at)}, {time(note.at)}
            </p>
            <NoteSays note={note} book={book} />
          </li>
        ))}
      </ol>
      {!book && form === 'follow-up' && (
        <FollowUpForm key={entry.hash} entry={entry} begun={begun} onDone={done} onLeave={close} />
      )}
      {!book && form === 'correction' && (
        <CorrectionForm key={entry.hash} entry={entry} begun={begun} onDone={done} onLeave={close} />
      )}
      {book && <p class="q">{say`What came after is noted in the book that this entry was written in.`}</p>}
      {!book && form === '' && (
        <div class="acts">
          {entry.kind === 'fill' && (
            <button type="button" class="b low" onClick={() => open('follow-up')}>
              {say`Note what became of it`}
            </button>
          )}
          <button type="button" class="b low" onClick={() => open('correction')}>
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
