import { useEffect, useState } from 'preact/hooks'
import { asItIs } from '../../book/attachments.ts'
import { partsOf, type ReviewResult } from '../../book/review.ts'
import type { ReviewFile } from '../../book/review-file.ts'
import { isFill } from '../../book/rows.ts'
import type { Entry, FillEntry } from '../../book/schema.ts'
import { reasonOf } from '../../job/left-out.ts'
import { symbol } from '../../units/symbol.ts'
import { roleWords } from '../../words/names.ts'
import { say, shown } from '../../words/say.ts'
import { procedureWords } from '../calculator/setup-summary.ts'
import { PageIcon } from '../parts/page-icons.tsx'
import { downloadBlob } from '../parts/download-blob.ts'
import { linesShown } from './lines-shown.ts'
import { kindWords } from './note-words.ts'
import { OutcomeWords } from './outcome.tsx'
import { ComparedWords } from './review-figures.tsx'
import { dayAndYear, time } from '../parts/wording.ts'

/** The readings as typed, the entries with their place in the chain, and the attachments. */
export function ReviewProof({ file, result }: { file: ReviewFile; result: ReviewResult }) {
  return (
    <section>
      <h3>{say`What was typed`}</h3>
      {file.job.tests.map((test) => (
        <details key={test.id} class="sec">
          <summary>
            <h4>{roleWords(test.role.trim()) || say`Test`}</h4> <span class="q">{say`${test.date}, as typed`}</span>
          </summary>
          <p>
            {say`${procedureWords[test.sheet.procedure]}, ${shown(test.sheet.direction)}; baseline before ${test.sheet.baselineBefore || say`none`}, after ${test.sheet.baselineAfter || say`none`}; indoor ${test.sheet.indoor || say`not typed`}, outdoor ${test.sheet.outdoor || say`not typed`}.`}
          </p>
          <ol>
            {test.sheet.points.map((point, at) => (
              // oxlint-disable-next-line react/no-array-index-key -- a reading has no id of its own; its place is what it is
              <li key={at}>
                {point.pressure || say`no pressure`} Pa, {point.flow || point.devicePressure || say`no flow`}{' '}
                {point.flow ? symbol(test.units.flow) : say`Pa at the device`} {point.range}
                {reasonOf(point) && say`, left out: ${reasonOf(point)}`}
              </li>
            ))}
          </ol>
          {test.notes && <p class="said-text">{test.notes}</p>}
        </details>
      ))}
      <h3>{say`Entries`}</h3>
      {partsOf(file).map(({ book, part }) => (
        <div key={book}>
          {book && <h4>{say`In ${book}, which the sender keeps beside`}</h4>}
          <ul class="plain">
            {part.entries.map((entry) => (
              <EntryLine key={entry.number} entry={entry} book={book} file={file} result={result} />
            ))}
          </ul>
        </div>
      ))}
      {result.texts.some((one) => one.result !== 'reproduced') && (
        <ul>
          {result.texts
            .filter((one) => one.result !== 'reproduced')
            .map((one) => (
              <li key={`${one.book}/${one.entry}/${one.control}`}>
                {one.book && `${one.book}: `}
                {say`Entry ${one.entry}, ${one.control}:`} <code>{one.recorded}</code> {say`in the file`},{' '}
                <code>{one.here || say`nothing`}</code> {say`here`}. <ComparedWords of={one.result} />
              </li>
            ))}
        </ul>
      )}
    </section>
  )
}

interface LineProps {
  entry: Entry
  book: string
  file: ReviewFile
  result: ReviewResult
}

function EntryLine({ entry, book, file, result }: LineProps) {
  const checked = result.entries.find((one) => one.entry === entry.number && one.book === book)
  return (
    <li>
      <span>
        {kindWords[entry.kind]} {entry.number}{' '}
        <span class="q">
          {dayAndYear(entry.at)}, {time(entry.at)}
          {isFill(entry) && `, ${say`${entry.map.name}, ${entry.lines.length} of ${entry.planned.length} controls`}`}
        </span>
        {entry.kind === 'attachment' && <Attached file={file} entry={entry} />}
        {isFill(entry) && <ReadBack entry={entry} />}
      </span>
      {checked?.fits ? (
        <span class="st x">
          <PageIcon name="entered" />
          <span>{say`fits the chain`}</span>
        </span>
      ) : (
        <span class="st bad">
          <PageIcon name="bad" />
          <span>{checked?.message ?? say`was not checked.`}</span>
        </span>
      )}
    </li>
  )
}

/** What every control was to hold, and what the page then held. */
function ReadBack({ entry }: { entry: FillEntry }) {
  return (
    <details class="sec">
      <summary>{say`Texts read back from the page`}</summary>
      <table class="t ls">
        <thead>
          <tr>
            <th scope="col">{say`Control`}</th>
            <th scope="col">{say`Intended`}</th>
            <th scope="col">{say`Read back`}</th>
            <th scope="col">{say`Outcome`}</th>
          </tr>
        </thead>
        <tbody>
          {linesShown(entry).map((line) => (
            <tr key={line.binding}>
              <th scope="row">{line.control}</th>
              <td class="m">{line.intended}</td>
              <td class="m">{line.readBack || <span class="q">{say`empty`}</span>}</td>
              <td>
                <OutcomeWords of={line.outcome} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}

function Attached({ file, entry }: { file: ReviewFile; entry: Extract<Entry, { kind: 'attachment' }> }) {
  const { name, sha256, type } = entry.file
  const bytes = file.blobs.get(sha256)?.bytes
  const [url, setUrl] = useState('')
  useEffect(() => () => URL.revokeObjectURL(url), [url])
  if (!bytes) return <p class="st bad">{say`${name} is not in the file.`}</p>
  const blob = () => asItIs(bytes.buffer)
  return (
    <span class="attached">
      {url && <img src={url} alt={say`Attached photo ${name}`} />}
      <span class="acts">
        {!url && type.startsWith('image/') && (
          <button type="button" class="b low" onClick={() => setUrl(URL.createObjectURL(blob()))}>
            {say`Look at ${name}`}
          </button>
        )}
        <button type="button" class="b low" onClick={() => downloadBlob(name, blob())}>
          {say`Export ${name}`}
        </button>
      </span>
    </span>
  )
}
