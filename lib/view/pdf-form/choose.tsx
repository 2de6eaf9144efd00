import { useRef, useState } from 'preact/hooks'
import { say } from '../../words/say.ts'
import { Icon } from '../parts/icons.tsx'
import { Tools } from './tools.tsx'

interface ChooseProps {
  /** Why the last file was not opened; empty when none was tried. */
  trouble: string
  onFile: (file: File) => void
}

/** Opens the browser's own list of files. */
export function askForFile(take: (file: File) => void): void {
  const input = document.createElement('input')
  input.type = 'file'
  input.accept = 'application/pdf,.pdf'
  input.addEventListener('change', () => {
    const [file] = input.files ?? []
    if (file) take(file)
  })
  input.click()
}

/** What the page shows before a form is open. */
export function Choose({ trouble, onFile }: ChooseProps) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <main class="choose">
      <Tools name="box">
        <h1>{say`Fill in a PDF form`}</h1>
        <p>
          {say`Drop the file here or choose it. It is read on this computer only, nothing of it is sent anywhere, and the file itself is never changed: what you fill in is saved as a new file.`}
        </p>
        {trouble && (
          <p class="note bad" role="alert">
            <Icon name="refused" /> {trouble}
          </p>
        )}
        <label class="b first pick">
          {say`Choose a PDF`}
          <input
            ref={input}
            class="vh"
            type="file"
            accept="application/pdf,.pdf"
            onChange={(event) => {
              const [file] = event.currentTarget.files ?? []
              // The same file may be chosen once more.
              if (file) onFile(file)
              if (input.current) input.current.value = ''
            }}
          />
        </label>
        <p class="q">
          {say`Does a tab show the form? Save it there first. A form that is signed, or asks for its own program, cannot be filled here; you are told why.`}
        </p>
      </Tools>
    </main>
  )
}

/** Asks for the password that a file wants before it shows anything; it is kept nowhere. */
export function Password({ file, wrong, onGiven, onBack }: PasswordProps) {
  const [typed, setTyped] = useState('')
  return (
    <main class="choose">
      <Tools name="box">
        <h1>{file}</h1>
        <form
          onSubmit={(event) => {
            event.preventDefault()
            onGiven(typed)
          }}
        >
          <label>
            {say`This PDF asks for its password`}
            <input
              class="in"
              type="password"
              autocomplete="off"
              value={typed}
              onInput={(event) => setTyped(event.currentTarget.value)}
            />
          </label>
          {wrong && <p class="note bad" role="alert">{say`This password does not open it.`}</p>}
          <p class="q">{say`It is used to open this file now and is kept nowhere.`}</p>
          <div class="acts">
            <button type="submit" class="b first" disabled={typed === ''}>{say`Open`}</button>
            <button type="button" class="b" onClick={onBack}>{say`Another file`}</button>
          </div>
        </form>
      </Tools>
    </main>
  )
}

interface PasswordProps {
  file: string
  wrong: boolean
  onGiven: (password: string) => void
  onBack: () => void
}
