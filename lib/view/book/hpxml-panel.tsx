import { useState } from 'preact/hooks'
import { listDevices } from '../../book/devices.ts'
import type { HpxmlJob } from '../../book/hpxml/import.ts'
import { saveJob } from '../../book/jobs.ts'
import { jobTitle } from '../../job/job-title.ts'
import { Said, useSaid } from './said.tsx'
import { count } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

type Chosen = { name: string; found: HpxmlJob[] }

/** Takes in an HPXML file: first what would come in, then new jobs only. */
export function HpxmlPanel() {
  const [chosen, setChosen] = useState<Chosen>()
  const { said, tell, run } = useSaid()

  const look = (input: HTMLInputElement) => {
    const file = input.files?.[0]
    input.value = ''
    setChosen(undefined)
    if (!file) return
    run(async () => {
      const { largest, readHpxml, tooLarge } = await import('../../book/hpxml/import.ts')
      if (file.size > largest) throw tooLarge(file.size)
      setChosen({ name: file.name, found: readHpxml(await file.text(), await listDevices()) })
    })
  }
  const take = ({ name, found }: Chosen) =>
    run(
      async () => {
        for (const { job } of found) await saveJob(job)
      },
      () => {
        setChosen(undefined)
        tell(say`${count(found.length, 'new job')} came from ${name}.`)
      },
    )

  return (
    <section class="group">
      <h2>{say`Take in HPXML`}</h2>
      <p class="q">
        {say`A file of the open standard HPXML, version 4.0 to 4.2 and at most 4 MB: its house and duct tests become new jobs. You see first what would come in. Nothing that is here is overwritten.`}
      </p>
      <label class="b low file">
        {say`Choose an HPXML file`}
        <input
          type="file"
          class="vh"
          accept="application/xml,text/xml,.xml"
          onChange={(event) => look(event.currentTarget)}
        />
      </label>
      <Said said={said} />
      {chosen && (
        <div class="plan" role="group" aria-label={say`What ${chosen.name} would add`}>
          <h3>{chosen.name}</h3>
          {chosen.found.map(({ job, lines, left }) => (
            <div key={job.id}>
              <p>
                {say`New job: `}
                <b>{jobTitle(job)}</b>
              </p>
              <ul>
                {[...lines, ...left].map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </div>
          ))}
          <div class="acts">
            <button type="button" class="b low first" onClick={() => take(chosen)}>
              {say`Add `}
              {chosen.found.length === 1 ? say`it` : say`them`}
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
