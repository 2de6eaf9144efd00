import { useRef, useState } from 'preact/hooks'
import { putBack, type Differing } from '../../book/differing.ts'
import { applyImport, isUsual, planImport, usuallyTaken, type ImportPlan } from '../../book/import.ts'
import type { Beside } from '../../book/import-others.ts'
import { isBackup, openBackup } from '../../book/backup.ts'
import { BookError } from '../../book/error.ts'
import { openBookFile, type BookSource } from '../../book/json.ts'
import type { Readable } from '../../book/lines.ts'
import { stoppable } from '../../book/stoppable.ts'
import { jobTitle } from '../../job/job-title.ts'
import { bareName, BesideFields, booksWords } from './beside-fields.tsx'
import { differingName, DifferingThings } from './differing.tsx'
import { MapContents } from './map-contents.tsx'
import { PassphraseField } from './passphrase-field.tsx'
import { Progress } from './progress.tsx'
import { Said, useSaid } from './said.tsx'
import { count, grouped } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/**
 * `beside`: the books that are to be kept beside, and what they are to be called. `taken`: what takes the place of yours.
 */
type Chosen = { name: string; plan: ImportPlan; source: BookSource; beside: Beside[]; taken: Differing[] }

/** Takes in a book file: first what would change, then what the person agrees to. */
export function ImportPanel() {
  const [locked, setLocked] = useState<File>()
  const [passphrase, setPassphrase] = useState('')
  const [chosen, setChosen] = useState<Chosen>()
  const [taking, setTaking] = useState(false)
  /** A file that could not be read to its end, and how to read what is whole in it. */
  const [broken, setBroken] = useState<{ name: string; read: () => Promise<void> }>()
  const [progress, setProgress] = useState('')
  // The file that was chosen last: a longer one chosen before it may be read later.
  const newest = useRef<File>(undefined)
  const { said, tell, run } = useSaid()
  const stopped = useRef<AbortController>(undefined)
  /** What ends when the person stops it; a file chosen before is read no further. */
  const begin = (): AbortSignal => {
    stopped.current?.abort()
    stopped.current = new AbortController()
    return stopped.current.signal
  }

  const look = async (of: File, file: Readable, passOver: boolean, signal: AbortSignal) => {
    const source = await openBookFile(file, { passOver })
    let told = -1
    const plan = await planImport(stoppable(source, signal), (share) => {
      const percent = Math.floor(share * 100)
      if (percent === told || newest.current !== of) return
      told = percent
      setProgress(say`reading the file, ${percent} %`)
    })
    if (newest.current === of)
      setChosen({ name: of.name, plan, source, beside: usualNames(plan, of.name), taken: usuallyTaken(plan) })
  }
  /** Looks at a file; when a part of it is damaged, what is whole can be looked at. */
  const open = async (of: File, read: (passOver: boolean) => Promise<Readable>) => {
    const signal = begin()
    setProgress(say`reading the file`)
    const whole = async () => {
      const again = begin()
      setProgress(say`reading the file`)
      setBroken(undefined)
      try {
        await look(of, await read(true), true, again)
      } catch (error) {
        if (!again.aborted) throw error
        tell(say`Stopped. Nothing was taken in.`)
      } finally {
        setProgress('')
      }
    }
    try {
      await look(of, await read(false), false, signal)
    } catch (error) {
      if (signal.aborted) return newest.current === of && tell(say`Stopped. Nothing was taken in.`)
      const path = error instanceof BookError ? (error.problems[0]?.path ?? '') : ''
      if (/^line (?!1$)/.test(path)) setBroken({ name: of.name, read: whole })
      throw error
    } finally {
      if (newest.current === of) setProgress('')
    }
  }
  const read = (input: HTMLInputElement) => {
    const file = input.files?.[0]
    input.value = ''
    if (!file) return
    setChosen(undefined)
    setLocked(undefined)
    setBroken(undefined)
    newest.current = file
    run(async () => {
      if (!(await isBackup(file))) await open(file, async () => file)
      else if (newest.current === file) setLocked(file)
    })
  }
  const unlock = () => {
    if (!locked) return
    run(
      () => open(locked, (passOver) => openBackup(locked, passphrase, { passOver })),
      () => {
        setLocked(undefined)
        setPassphrase('')
      },
    )
  }
  const take = () => {
    if (!chosen) return
    setTaking(true)
    const signal = begin()
    let added = 0
    const tellAdded = (entries: number) => {
      added = entries
      setProgress(say`${grouped(entries)} of ${grouped(toAdd(chosen))} entries are added`)
    }
    tellAdded(0)
    const work = async () => {
      try {
        const source = stoppable(chosen.source, signal)
        await applyImport(chosen.plan, source, chosen.name, tellAdded, chosen.beside, chosen.taken)
      } catch (error) {
        if (!signal.aborted) throw error
        setChosen(undefined)
      } finally {
        setTaking(false)
        setProgress('')
      }
    }
    run(work, () => {
      if (signal.aborted)
        return tell(
          say`Stopped: ${grouped(added)} of ${grouped(toAdd(chosen))} entries were added and stay. Choose the file again to add the rest.`,
        )
      setChosen(undefined)
      const words = [say`${chosen.name} was taken in.`, ...chosenWords(chosen)].join(' ')
      if (chosen.taken.length === 0) return tell(words)
      tell(words, say`Put yours back`, async () => {
        await putBack(chosen.taken)
        tell(say`Put back as yours: ${namesOf(chosen.taken)}.`)
      })
    })
  }
  const plan = chosen?.plan

  return (
    <section class="group">
      <h2>{say`Take in a file`}</h2>
      <p class="q">
        {say`A file that was exported from a book: jobs, devices, limits, form maps or a whole book, encrypted or not. You see first what it would add. What is here with other content is compared with yours, and stays unless you choose the file’s.`}
      </p>
      <label class="b low file">
        {say`Choose a file`}
        <input type="file" class="vh" accept="application/json,.json" onChange={(event) => read(event.currentTarget)} />
      </label>
      <Said said={said} />
      <Progress words={progress} onStop={() => stopped.current?.abort()} />
      {broken && !progress && (
        <div class="acts">
          <p>{say`Each record of the file is sealed by itself. What is whole before and after the damaged part can be taken in.`}</p>
          <button type="button" class="b low" onClick={() => run(broken.read)}>
            {say`Look at what is whole in ${broken.name}`}
          </button>
        </div>
      )}
      {locked && (
        <form
          class="sheet"
          onSubmit={(event) => {
            event.preventDefault()
            unlock()
          }}
        >
          <p>{say`${locked.name} is encrypted.`}</p>
          <PassphraseField label={say`Passphrase`} value={passphrase} onInput={setPassphrase} />
          <div class="acts">
            <button type="submit" class="b low first">
              {say`Open it`}
            </button>
          </div>
        </form>
      )}
      {chosen && plan && (
        <div class="plan" role="group" aria-label={say`What ${chosen.name} would add`}>
          <h3>{chosen.name}</h3>
          <ul>
            {lines(plan, chosen.beside).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {[...plan.maps.add, ...plan.maps.next.map(({ theirs }) => theirs)].map((map) => (
            <MapContents key={`${map.id}-${map.version}`} map={map} />
          ))}
          {plan.devices.add.map((device) => (
            <p key={device.id}>
              {say`Device ${device.name}: ${count(device.ranges.length, 'range')}, calibrated ${device.calibrated || say`on no day given`}. Compare the coefficients with the certificate before you use it.`}
            </p>
          ))}
          {plan.limits.add.map((limit) => (
            <p key={limit.id}>
              {say`Limit ${limit.name}: at most ${limit.value} ${limit.unit}, from ${limit.origin || say`no origin given`}. Compare it with the paper before you use it.`}
            </p>
          ))}
          <DifferingThings
            all={differing(plan)}
            taken={chosen.taken}
            onChange={(taken) => setChosen({ ...chosen, taken })}
          />
          <BesideFields
            plan={plan}
            file={chosen.name}
            beside={chosen.beside}
            onChange={(beside) => setChosen({ ...chosen, beside })}
          />
          <div class="acts">
            <button
              type="button"
              class="b low first"
              onClick={take}
              disabled={taking || additions(plan) + chosen.taken.length + toAdd(chosen) === 0}
            >
              {say`Add them`}
            </button>
            <button type="button" class="b low bare" onClick={() => setChosen(undefined)}>
              {say`Leave it`}
            </button>
          </div>
        </div>
      )}
    </section>
  )
}

/** What is kept beside unless the person chooses otherwise; a book that the file does not name is called as the file. */
const usualNames = ({ others }: ImportPlan, file: string): Beside[] =>
  others.flatMap((planned) => (isUsual(planned) ? { planned, name: planned.name || bareName(file) } : []))

/** Devices, limits and form maps that are here with other content. */
const differing = ({ devices, limits, maps }: ImportPlan): Differing[] => [
  ...devices.kept,
  ...limits.kept,
  ...maps.next,
]

const namesOf = (some: readonly Differing[]) => some.map(differingName).join(', ')

/** What was chosen of what differs, in words. */
function chosenWords({ plan, taken }: Pick<Chosen, 'plan' | 'taken'>): string[] {
  const kept = differing(plan).filter((one) => !taken.includes(one))
  return [
    ...(taken.length > 0 ? [say`Taken from the file: ${namesOf(taken)}.`] : []),
    ...(kept.length > 0 ? [say`Kept as yours: ${namesOf(kept)}.`] : []),
  ]
}

/** How many entries will be added to this book and to those beside it. */
function toAdd({ plan, beside }: Pick<Chosen, 'plan' | 'beside'>): number {
  const begins = !beside.some(({ planned }) => planned.canBegin)
  return beside.reduce((sum, { planned }) => sum + planned.add, begins ? plan.entries.add : 0)
}

function additions({ jobs, devices, maps, limits, blobs, settings }: ImportPlan): number {
  const records = [jobs.add, devices.add, maps.add, limits.add, blobs.add]
  return records.reduce((sum, { length }) => sum + length, settings ? 1 : 0)
}

function lines(plan: ImportPlan, beside: readonly Beside[]): string[] {
  const { jobs, devices, maps, limits, joining, blobs } = plan
  // What is kept beside does not begin this book.
  const entries = beside.some(({ planned }) => planned.canBegin) ? { ...plan.entries, add: 0 } : plan.entries
  const kinds: [add: number, same: number, one: string, many: string][] = [
    [jobs.add.length, jobs.same, 'job', 'jobs'],
    [devices.add.length, devices.same, 'device', 'devices'],
    [limits.add.length, limits.same, 'limit', 'limits'],
    [maps.add.length, maps.same, 'version of form maps', 'versions of form maps'],
    [blobs.add.length, blobs.same, 'attached file', 'attached files'],
    [entries.add, entries.same, 'entry', 'entries'],
  ]
  const said = kinds.flatMap(([add, same, one, many]) => [
    add > 0 ? say`${count(add, one, many)} will be added.` : '',
    same === 1 ? say`${count(same, one, many)} is here already.` : '',
    same > 1 ? say`${count(same, one, many)} are here already.` : '',
  ])
  for (const job of jobs.kept) said.push(say`${jobTitle(job)} is here with other content; yours stays.`)
  const other = differing(plan)
  if (other.length > 0)
    said.push(say`Here with other content: ${namesOf(other)}. Compare the two below, and choose one.`)
  if (plan.settings)
    said.push(say`Tester, units and look will be taken from the file, as this book has none of its own.`)
  if (entries.add > 0) said.push(say`The book marks them as taken in from this file: they were not typed here.`)
  if (blobs.missing.length > 0)
    said.push(
      say`${count(blobs.missing.length, 'attached file')} of these entries is neither in the file nor in this book: ${blobs.missing.slice(0, 5).join(', ')}. Only the fingerprint will be here; look for the file in an earlier backup.`,
    )
  said.push(...booksWords(plan))
  if (plan.nameless > 0)
    said.push(
      say`${count(plan.nameless, 'entry', 'entries')} of books beside are left out: the line that names their book is damaged.`,
    )
  if (plan.damaged > 0)
    said.push(say`Lines of the file that are not as they were written, and are left out: ${plan.damaged}.`)
  for (const [from, to] of joining.gaps)
    said.push(
      from === to
        ? say`Entry ${from} is not in the file. The chain will name it as missing, until a whole backup adds it.`
        : say`Entries ${from} to ${to} are not in the file. The chain will name the first as missing, until a whole backup adds them.`,
    )
  const told = said.filter(Boolean)
  return told.length > 0 ? told : [say`The file is empty.`]
}
