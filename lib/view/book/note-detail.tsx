import type { NoteEntry } from '../../book/schema.ts'
import { AttachedFile } from './attached-file.tsx'
import { Place } from './entry-side.tsx'
import { kindWords } from './note-words.ts'
import { hashOf } from './route.ts'
import { statusWords } from './status-words.tsx'
import { dayAndYear } from '../parts/wording.ts'
import { say, shown } from '../../words/say.ts'

/** An entry about another one, opened in place. */
export function NoteDetail({ note, book = '' }: { note: NoteEntry; book?: string }) {
  return (
    <div class="bd">
      <div class="side">
        <Place entry={note} book={book} />
      </div>
      <section class="note">
        <h2>
          {kindWords[note.kind]}
          {note.of !== undefined && (
            <>
              {' '}
              {say`of `}
              <a href={hashOf({ section: 'entries', entry: note.of, book })}>{say`entry ${note.of}`}</a>
            </>
          )}
        </h2>
        <NoteSays note={note} book={book} />
      </section>
    </div>
  )
}

/** What a note says, in full. */
export function NoteSays({ note, book = '' }: { note: NoteEntry; book?: string }) {
  return (
    <>
      {note.kind === 'follow-up' && (
        <p>
          {statusWords[note.status]}
          {note.confirmation && <>{say`, number ${note.confirmation}`}</>}
          {note.due && <>{say`, due ${dayAndYear(`${note.due}T12:00`)}`}</>}
          {note.keepUntil && <>{say`, keep until ${dayAndYear(`${note.keepUntil}T12:00`)}`}</>}
          {note.resubmittedAs !== undefined && (
            <>
              {' '}
              {say`as `}
              <a href={hashOf({ section: 'entries', entry: note.resubmittedAs, book })}>
                {say`entry ${note.resubmittedAs}`}
              </a>
            </>
          )}
        </p>
      )}
      {(note.kind === 'follow-up' || note.kind === 'correction') && note.reason && <p>{say`Reason: ${note.reason}`}</p>}
      {note.kind === 'attachment' && <AttachedFile file={note.file} />}
      {note.kind === 'review' && (
        <>
          <p>
            {say`${note.reviewer} found `}
            {note.findings.length === 0 ? say`nothing to note.` : say`this:`}
          </p>
          <ul>
            {note.findings.map((finding, at) => (
              // oxlint-disable-next-line react/no-array-index-key -- a finding has no id of its own and keeps its place
              <li key={at}>
                <b>{shown(finding.weight)}</b>, {finding.about}: {finding.text}
              </li>
            ))}
          </ul>
        </>
      )}
      {note.text && <p class="said-text">{note.text}</p>}
    </>
  )
}
