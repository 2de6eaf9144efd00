import { useState } from 'preact/hooks'
import { entriesForwards } from '../../book/entries.ts'
import { fileParts } from '../../book/json.ts'
import { allOthers, putAwayOther, renameOther, type OtherBook } from '../../book/others.ts'
import { verifyBook } from '../../book/verify.ts'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { TextField, Trouble } from './field.tsx'
import { findingWords } from './finding-words.ts'
import { hashOf } from './route.ts'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { bookCount, count, dayAndYear } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** The books that are kept beside one's own: where they come from, their chains, their names. */
export function BooksPanel() {
  const others = useLive(allOthers, ['entries'])
  const { said, tell, run } = useSaid()
  if (!others.value?.length) return <Trouble text={others.trouble} />
  const shown = others.value.filter(({ putAway }) => !putAway)
  const away = others.value.filter(({ putAway }) => putAway)
  const put = (other: OtherBook) =>
    run(
      () => putAwayOther(other.key, true),
      () => tell(say`${other.name} was put away.`, say`Put it back`, () => putAwayOther(other.key, false)),
    )
  return (
    <section class="group" aria-label={say`Books beside yours`}>
      <h2>{say`Books beside yours`}</h2>
      <p class="q">
        {say`Books that you took in from files: of another browser, of somebody else, or one that was lost. They can be searched and read with yours, and are never added to. To bring one up to date, take in a newer file of it.`}
      </p>
      <ul class="plain books">
        {shown.map((other) => (
          <Other key={other.key} other={other} onPutAway={() => put(other)} run={run} tell={tell} />
        ))}
      </ul>
      {away.length > 0 && (
        <details class="sec">
          <summary>
            <h3>{say`Put away`}</h3> <span class="q">{bookCount(away.length)}</span>
          </summary>
          <ul class="plain">
            {away.map(({ key, name }) => (
              <li key={key}>
                <span>{name}</span>
                <button type="button" class="b low" onClick={() => run(() => putAwayOther(key, false))}>
                  {say`Put back`}
                  <span class="vh"> {name}</span>
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <Said said={said} />
    </section>
  )
}

interface Props {
  other: OtherBook
  onPutAway: () => void
  run: (work: () => Promise<unknown>, then?: () => void) => void
  tell: (text: string) => void
}

function Other({ other, onPutAway, run, tell }: Props) {
  const [name, setName] = useState<string>()
  const { key, count: entries, hash, takenIn } = other
  const last = takenIn.at(-1)
  const check = async () => {
    const { chain, ...found } = await verifyBook(true, undefined, other)
    const sentences = [
      chain.ok ? say`The chain of ${other.name} fits: ${count(chain.count, 'entry', 'entries')}.` : chain.message,
      ...findingWords(found),
      ...(chain.ok && chain.backwards?.[0]
        ? [
            say`Its times run backwards at entry ${chain.backwards[0].entry}: a clock was set back, or it was written elsewhere.`,
          ]
        : []),
    ]
    tell(sentences.join(' '))
  }
  return (
    <li>
      <span>
        <b>{other.name}</b>{' '}
        <span class="q">
          {count(entries, 'entry', 'entries')}
          {last && say`, last taken in from ${last.file || say`a file`} on ${dayAndYear(last.at)}`}
          {say`, newest fingerprint `}
          <code title={hash}>{hash.slice(0, 16)}</code>
          {other.book && say`, written in book ${other.book.slice(0, 8)}`}
        </span>
      </span>
      <span class="acts">
        <a class="b low" href={hashOf({ section: 'entries', book: key })}>
          {say`Entries`}
          <span class="vh">{say` of ${other.name}`}</span>
        </a>
        <button type="button" class="b low" onClick={() => run(check)}>
          {say`Check its chain`}
          <span class="vh">{say` of ${other.name}`}</span>
        </button>
        <button
          type="button"
          class="b low"
          onClick={() =>
            run(() =>
              download(
                fileName(other.name, 'json'),
                jsonType,
                fileParts({ ...(other.book && { book: other.book }) }, entriesForwards(0, key)),
              ),
            )
          }
        >
          {say`Export`}
          <span class="vh"> {other.name}</span>
        </button>
        <button type="button" class="b low" onClick={() => setName(name === undefined ? other.name : undefined)}>
          {say`Rename`}
          <span class="vh"> {other.name}</span>
        </button>
        <button type="button" class="b low bare" onClick={onPutAway}>
          {say`Put away`}
          <span class="vh"> {other.name}</span>
        </button>
      </span>
      {name !== undefined && (
        <form
          class="sheet"
          onSubmit={(event) => {
            event.preventDefault()
            run(
              () => renameOther(key, name),
              () => setName(undefined),
            )
          }}
        >
          <TextField label={say`New name of ${other.name}`} value={name} onInput={setName} />
          <div class="acts">
            <button type="submit" class="b low first">
              {say`Keep the name`}
            </button>
          </div>
        </form>
      )}
    </li>
  )
}
