import { useRef, useState } from 'preact/hooks'
import type { ShelfRecord } from '../../book/database.ts'
import { filesOf, keepsFolders, mayUse, pickFolder, writeInto } from '../../book/shelf/folder.ts'
import { leaveShelf, saveShelf } from '../../book/shelf/record.ts'
import { takeInShelf, type ShelfFile, type TakenFromShelf } from '../../book/shelf/take-in.ts'
import { missingSegments, ownDiffers } from '../../book/shelf/write.ts'
import { count, grouped } from '../parts/wording.ts'
import { downloadBlob } from '../parts/download-blob.ts'
import { jsonType } from './download.ts'
import { TextField, Trouble } from './field.tsx'
import { Progress } from './progress.tsx'
import { Said, useSaid } from './said.tsx'
import { say } from '../../words/say.ts'

/** What came of a visit to the shelf. */
interface Visit extends TakenFromShelf {
  written: number
}

function visitWords({ added, written, told }: Visit): string {
  const parts = [
    written > 0 && say`Written to the shelf: ${count(written, 'entry', 'entries')}.`,
    ...added.map(({ name, entries }) => say`Taken in from ${name}: ${count(entries, 'entry', 'entries')}.`),
  ].filter(Boolean)
  if (parts.length > 0) return parts.join(' ')
  return told.length > 0 ? say`Nothing was written or taken in.` : say`Nothing is new on either side.`
}

/** One record for several computers and people: a folder that something else carries between them. */
export function ShelfPanel({ record, trouble }: { record: ShelfRecord | undefined; trouble: string }) {
  const [typed, setTyped] = useState<string>()
  const [told, setTold] = useState<readonly string[]>([])
  const [progress, setProgress] = useState('')
  /** Files of a folder that was chosen for one reading. */
  const [chosen, setChosen] = useState<readonly ShelfFile[]>()
  const stopped = useRef<AbortController>(undefined)
  const { said, tell, run, once } = useSaid()
  const { shelf = '', folder } = record ?? {}
  const name = typed ?? shelf

  /** Writes what is new and takes in what others wrote, as far as it gets until it is stopped. */
  const visit = async (files: readonly ShelfFile[], into: FileSystemDirectoryHandle | undefined) => {
    const { signal } = (stopped.current = new AbortController())
    setTold([])
    setProgress(say`looking at the shelf`)
    const result: Visit = { added: [], told: [], written: 0 }
    try {
      const names = files.map((file) => file.name)
      const differs = await ownDiffers(names)
      if (differs) result.told.push(differs)
      else if (into) {
        for await (const part of missingSegments(names, await saveShelf(name))) {
          signal.throwIfAborted()
          await writeInto(into, part)
          result.written += part.entries
          setProgress(say`${grouped(result.written)} entries are written`)
        }
      }
      const taken = await takeInShelf(
        files,
        (entries) => setProgress(say`${grouped(entries)} entries are taken in`),
        signal,
      )
      result.added = taken.added
      result.told.push(...taken.told)
      signal.throwIfAborted()
    } catch (error) {
      if (!signal.aborted) throw error
      result.told.push(say`Stopped. What was written and taken in by then stays.`)
    } finally {
      setProgress('')
    }
    setTold(result.told)
    tell(visitWords(result))
  }

  const withFolder = async (choose: boolean) => {
    const used = choose || !folder ? await pickFolder() : folder
    if (!used) return
    if (!(await mayUse(used))) {
      setTold([say`The browser was not allowed to use the folder. Press again and allow it.`])
      return
    }
    await saveShelf(name, used)
    setTyped(undefined)
    await visit(await filesOf(used), used)
  }

  const readChosen = (input: HTMLInputElement) => {
    const files = [...(input.files ?? [])].flatMap((file): ShelfFile[] =>
      // One that was begun and never written is as good as not there.
      file.size > 0 ? [{ name: file.name, open: async () => file }] : [],
    )
    input.value = ''
    once(async () => {
      await saveShelf(name)
      setTyped(undefined)
      setChosen(files)
      await visit(files, undefined)
    })
  }

  /** For browsers that keep no folder: the segments that are not there, as files to be put there. */
  const saveNew = () =>
    once(async () => {
      const names = (chosen ?? []).map((file) => file.name)
      const differs = await ownDiffers(names)
      if (differs) return setTold([differs])
      let entries = 0
      for await (const part of missingSegments(names, await saveShelf(name))) {
        downloadBlob(part.name, new Blob(await Array.fromAsync(part.parts()), { type: jsonType }))
        entries += part.entries
      }
      tell(
        entries > 0
          ? say`Saved: ${count(entries, 'entry', 'entries')}. Put the file into the shelf’s folder under the name that it has.`
          : say`The shelf has all entries of this book.`,
      )
    })

  const named = name.trim() !== ''
  return (
    <section class="group" aria-label={say`Shelf`}>
      <h2>{say`Shelf`}</h2>
      <p class="q">
        {say`A folder that several computers share, by whatever carries your files already. This book writes its new entries into it and takes in those of the others, which then stand beside yours, to be read and searched. Gapsum itself sends nothing. Whoever can read the folder can read what you write there.`}
      </p>
      <div class="fields">
        <TextField
          label={say`What this book is called on the shelf`}
          hint={say`Such as the tester and the computer.`}
          value={name}
          onInput={setTyped}
        />
      </div>
      {!named && <p class="q">{say`Give this book a name first: the others see it.`}</p>}
      {keepsFolders() ? (
        <div class="acts">
          {folder && (
            <button
              type="button"
              class="b low first"
              disabled={!named || progress !== ''}
              onClick={() => once(() => withFolder(false))}
            >
              {say`Write and take in: ${folder.name}`}
            </button>
          )}
          <button
            type="button"
            class="b low"
            disabled={!named || progress !== ''}
            onClick={() => once(() => withFolder(true))}
          >
            {folder ? say`Choose another folder` : say`Choose the folder`}
          </button>
          {folder && (
            <button
              type="button"
              class="b low bare"
              onClick={() =>
                run(leaveShelf, () =>
                  tell(say`The folder is no longer used. What is there stays there, and what was taken in stays here.`),
                )
              }
            >
              {say`Stop using it`}
            </button>
          )}
        </div>
      ) : (
        <>
          <div class="fields">
            <label class="fld">
              <span>{say`Take in from the shelf’s folder`}</span>
              <input
                type="file"
                disabled={!named || progress !== ''}
                {...{ webkitdirectory: true }}
                onChange={(event) => readChosen(event.currentTarget)}
              />
            </label>
          </div>
          {chosen && (
            <div class="acts">
              <button type="button" class="b low first" onClick={saveNew}>
                {say`Save what is new for the shelf`}
              </button>
            </div>
          )}
        </>
      )}
      <Trouble text={trouble} />
      <Progress words={progress} onStop={() => stopped.current?.abort()} />
      <Said said={said} />
      {told.length > 0 && (
        <ul class="plain" role="alert">
          {told.slice(0, 50).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </section>
  )
}
