import { entryOfFill } from '../../book/entries.ts'
import { fileParts } from '../../book/json.ts'
import { originOf, origins, type Origin } from '../../book/origin.ts'
import { allOthers, nameOfBook } from '../../book/others.ts'
import { isFill } from '../../book/rows.ts'
import type { Entry, FiledDocument, FillEntry } from '../../book/schema.ts'
import { pointsLeftOut } from '../../job/left-out.ts'
import { roleWords } from '../../words/names.ts'
import { say, shown } from '../../words/say.ts'
import { asRead } from '../../results/in-locale.ts'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { linesShown, type LineShown } from './lines-shown.ts'
import { openCalculator } from '../../extension/open-book.ts'
import { OutcomeWords } from './outcome.tsx'
import { hashOf } from './route.ts'
import { useLive } from '../parts/use-live.ts'
import { bytes, count, dayAndYear, numeral, placeWords, time } from '../parts/wording.ts'

/** Beside the bindings of an entry: what wants a look, what stood behind it, its place in the chain. */
export function EntrySide({ entry, book = '' }: { entry: FillEntry; book?: string }) {
  const look = linesShown(entry).filter(({ outcome }) => outcome !== 'entered')
  return (
    <div class="side">
      {look.length > 0 ? (
        <section>
          <h2>{say`${numeral(look.length)} to look at`}</h2>
          {!entry.complete && (
            <p>{say`The fill did not go through to its end. What was being typed at that moment could not be read back: look at the form.`}</p>
          )}
          {look.slice(0, 12).map((line) => (
            <Look key={line.binding} line={line} />
          ))}
          {look.length > 12 && <p class="q">{say`and ${look.length - 12} more in the table`}</p>}
        </section>
      ) : (
        <section>
          <h2>{say`Nothing to look at`}</h2>
          <p class="q">{say`Every control held what was to be entered.`}</p>
        </section>
      )}
      <Readings entry={entry} />
      <Place entry={entry} book={book} />
      <div class="acts">
        <button type="button" class="b low" onClick={() => void openCalculator(entry.job.id)}>
          {say`Open the job`}
        </button>
        <button
          type="button"
          class="b low"
          onClick={() =>
            void download(
              fileName(say`entry ${entry.number}`, 'json'),
              jsonType,
              fileParts({ ...(entry.book && { book: entry.book }) }, [entry]),
            )
          }
        >
          {say`Export this entry`}
        </button>
        {entry.readings?.tests[0] && (
          <a class="b low" href={hashOf({ section: 'report', job: entry.job.id, of: entry.number, book })}>
            {say`Report`}
          </a>
        )}
      </div>
    </div>
  )
}

function Look({ line }: { line: LineShown }) {
  return (
    <div class="look">
      <OutcomeWords of={line.outcome} words={line.control} />
      <p>
        {line.outcome === 'not reached' ? (
          <>
            {say`not reached; intended`} <code>{line.intended}</code>
          </>
        ) : (
          <>
            {shown(line.outcome)}: {say`intended`} <code>{line.intended || say`empty`}</code>, {say`read back`}{' '}
            <code>{line.readBack || say`empty`}</code>
          </>
        )}
        {line.note && line.outcome !== 'not reached' && <span class="q">; {line.note}</span>}
      </p>
    </div>
  )
}

/** The readings that the texts were worked out from; they stay in the entry even when the job changes. */
function Readings({ entry }: { entry: FillEntry }) {
  const tests = entry.readings?.tests ?? []
  if (tests.length === 0) return null
  return (
    <section>
      <h2>{say`Readings kept with it`}</h2>
      <dl>
        {tests.map((test) => (
          <div key={test.id}>
            <dt>{roleWords(test.role)}</dt>
            <dd>
              {count(test.sheet.points.length, 'point')}
              {pointsLeftOut(test).map(({ row, reason }) => say`, point ${row + 1} left out: ${reason}`)}
              {test.date && `, ${dayAndYear(`${test.date}T12:00`)}`}
              <HeldWith entry={entry} test={test.id} device={test.sheet.device} />
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

/** The verdict and the device that the entry holds of a test: both stay when device or limit are changed. */
function HeldWith({ entry: { basis }, test, device: id }: { entry: FillEntry; test: string; device: string }) {
  const held = basis?.tests.find((one) => one.test === test)
  const device = basis?.devices.find((one) => one.id === id)
  const [verdict] = held?.verdict?.sentences ?? []
  return (
    <>
      {verdict && <small class="q line">{asRead(verdict.text)}</small>}
      {device && (
        <small class="q line">
          {[
            device.name,
            device.serial,
            device.calibrated && say`calibrated ${dayAndYear(`${device.calibrated}T12:00`)}`,
          ]
            .filter(Boolean)
            .join(', ')}
        </small>
      )}
    </>
  )
}

export function Place({ entry, book = '' }: { entry: Entry; book?: string }) {
  const undo = entry.kind === 'undo' ? entry.of : undefined
  const undone = useLive(async () => (undo ? ((await entryOfFill(undo, book))?.number ?? null) : null), [], entry.id)
  const origin = useLive(() => whereFrom(entry, book), ['entries'], `${book} ${entry.number}`)
  const other = useLive(() => nameOfBook(book), ['entries'], book)
  return (
    <section>
      <h2>{say`Place in the chain`}</h2>
      <dl>
        <div>
          <dt>{say`added`}</dt>
          <dd>
            {dayAndYear(entry.at)}, {time(entry.at)}
          </dd>
        </div>
        {origin.value && origin.value.is !== 'not known' && (
          <div>
            <dt>{say`origin`}</dt>
            <dd>{originWords(origin.value)}</dd>
          </div>
        )}
        {other.value && (
          <div>
            <dt>{say`book`}</dt>
            <dd>{say`${other.value}, kept beside yours and only to be read`}</dd>
          </div>
        )}
        {isFill(entry) && (
          <>
            <div>
              <dt>{say`form map`}</dt>
              <dd>
                <a href={hashOf({ section: 'maps', map: entry.map.id })}>{entry.map.name}</a>,{' '}
                {say`version ${entry.map.version}`}
              </dd>
            </div>
            <div>
              <dt>{say`page`}</dt>
              <dd>
                {entry.page.title && `${entry.page.title}, `}
                {placeWords(entry.page)}
              </dd>
            </div>
            {entry.document && (
              <>
                <SavedFile label={say`form as it was`} file={entry.document.empty} />
                <SavedFile label={say`filled form`} file={entry.document.filled} />
              </>
            )}
          </>
        )}
        <div>
          <dt>{say`program`}</dt>
          <dd>{say`Gapsum ${entry.engine}`}</dd>
        </div>
        {isFill(entry) && entry.earlier !== undefined && (
          <div>
            <dt>{say`corrects or repeats`}</dt>
            <dd>
              <EntryLink number={entry.earlier} book={book} />
            </dd>
          </div>
        )}
        {typeof undone.value === 'number' && (
          <div>
            <dt>{say`puts back what changed in`}</dt>
            <dd>
              <EntryLink number={undone.value} book={book} />
            </dd>
          </div>
        )}
        <div>
          <dt>{say`before it`}</dt>
          <dd>
            {entry.previous ? <code title={entry.previous}>{entry.previous.slice(0, 16)}</code> : say`the first entry`}
          </dd>
        </div>
        <div>
          <dt>{say`fingerprint`}</dt>
          <dd>
            <code title={entry.hash}>{entry.hash.slice(0, 16)}</code>
          </dd>
        </div>
      </dl>
    </section>
  )
}

/** A file that the entry names: by the SHA-256 of its bytes it is known again whatever it is called by then. */
function SavedFile({ label, file }: { label: string; file: FiledDocument['filled'] }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        {file.name}, {bytes(file.size)}, SHA-256 <code title={file.sha256}>{file.sha256.slice(0, 16)}</code>
      </dd>
    </div>
  )
}

/** Where an entry comes from; of a book beside, which file brought it. */
async function whereFrom(entry: Entry, book: string): Promise<Origin> {
  if (!book) return originOf(entry, await origins())
  const other = (await allOthers()).find(({ key }) => key === book)
  return originOf(entry, { book: '', takenIn: other?.takenIn ?? [] })
}

function originWords(origin: Origin): string {
  if (!('book' in origin)) return say`written in this book`
  const book = origin.book ? say`written in book ${origin.book.slice(0, 8)}` : say`written in a book that is not named`
  return origin.is === 'of another book'
    ? book
    : say`taken in from ${origin.file || say`a file`} on ${dayAndYear(origin.at)}; ${book}`
}

function EntryLink({ number, book }: { number: number; book: string }) {
  return <a href={hashOf({ section: 'entries', entry: number, book })}>{number}</a>
}
