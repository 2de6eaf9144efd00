import { useRef, useState } from 'preact/hooks'
import { encrypted, shortestPassphrase } from '../../book/backup.ts'
import { wholeBook } from '../../book/json.ts'
import { until } from '../../book/stoppable.ts'
import { getSettings, saveSettings } from '../../book/settings.ts'
import { download } from './download.ts'
import { fileName } from './file-name.ts'
import { PassphraseField } from './passphrase-field.tsx'
import { Progress } from './progress.tsx'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { dayAndYear, grouped } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** Writes the whole book to a file behind a passphrase. */
export function BackupPanel() {
  const settings = useLive(getSettings, ['settings'])
  const [passphrase, setPassphrase] = useState('')
  const [again, setAgain] = useState('')
  const { said, tell, run } = useSaid()
  const [progress, setProgress] = useState('')
  const stopped = useRef<AbortController>(undefined)
  const last = settings.value?.backedUp

  const write = () =>
    run(
      async () => {
        if (passphrase !== again) throw new Error(say`the two passphrases differ. Type the same one twice.`)
        stopped.current?.abort()
        const { signal } = (stopped.current = new AbortController())
        setProgress(say`writing the file`)
        const tellWritten = (entries: number, of: number) =>
          setProgress(say`${grouped(entries)} of ${grouped(of)} entries are written`)
        try {
          const parts = encrypted(until(wholeBook(tellWritten), signal), passphrase)
          await download(fileName('backup', 'txt'), 'text/plain', parts)
        } catch (error) {
          if (signal.aborted) throw new Error(say`you stopped it. There is no file of it.`, { cause: error })
          throw error
        } finally {
          setProgress('')
        }
        await saveSettings({ backedUp: new Date().toISOString() })
      },
      () => {
        setPassphrase('')
        setAgain('')
        tell(say`The backup was handed to the browser as a download. Copy it to another place than this machine.`)
      },
    )

  return (
    <section class="group">
      <h2>{say`Backup`}</h2>
      <p>
        {say`Everything in one encrypted file: jobs, devices, limits, form maps, settings, entries and attachments.`}{' '}
        {last ? say`The last one was made ${dayAndYear(last)}.` : say`None was made yet.`}
      </p>
      <form
        class="sheet"
        onSubmit={(event) => {
          event.preventDefault()
          write()
        }}
      >
        <PassphraseField
          label={say`Passphrase of the backup`}
          hint={say`At least ${shortestPassphrase} characters. Without it nobody can open the file, and nobody can look it up.`}
          value={passphrase}
          onInput={setPassphrase}
        />
        <PassphraseField label={say`The same once more`} value={again} onInput={setAgain} />
        <div class="acts">
          <button type="submit" class="b low first">
            {say`Write the backup`}
          </button>
        </div>
      </form>
      <Said said={said} />
      <Progress words={progress} onStop={() => stopped.current?.abort()} />
    </section>
  )
}
