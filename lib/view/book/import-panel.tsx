import { useState } from 'preact/hooks'
import { applyImport, planImport, type ImportPlan } from '../../book/import.ts'
import { readBookFile } from '../../book/json.ts'
import { jobTitle } from '../calculator/job-title.ts'
import { Said, useSaid } from './said.tsx'
import { count } from './wording.ts'

/** Takes in a book file: first what would change, then only additions. */
export function ImportPanel() {
  const [plan, setPlan] = useState<{ file: string; plan: ImportPlan }>()
  const { said, say, run } = useSaid()

  const read = (input: HTMLInputElement) => {
    const file = input.files?.[0]
    input.value = ''
    if (!file) return
    setPlan(undefined)
    run(async () => setPlan({ file: file.name, plan: await planImport(readBookFile(await file.text())) }))
  }
  const take = () => {
    if (!plan) return
    run(
      () => applyImport(plan.plan),
      () => {
        setPlan(undefined)
        say(`${plan.file} was taken in.`)
      },
    )
  }

  return (
    <section class="group">
      <h2>Take in a file</h2>
      <p class="q">
        A file that was exported from a book: jobs, devices, form maps or a whole book. You see first what it would add.
        Nothing that is here is overwritten.
      </p>
      <label class="b low file">
        Choose a file
        <input type="file" class="vh" accept="application/json,.json" onChange={(event) => read(event.currentTarget)} />
      </label>
      <Said said={said} />
      {plan && (
        <div class="plan" role="group" aria-label={`What ${plan.file} would add`}>
          <h3>{plan.file}</h3>
          <ul>
            {lines(plan.plan).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <div class="acts">
            <button type="button" class="b low first" onClick={take} disabled={additions(plan.plan) === 0}>
              Add them
            </button>
            <button type="button" class="b low bare" onClick={() => setPlan(undefined)}>
              Leave it
            </button>
          </div>
        </div>
      )}
    </section>
  )
}

function additions({ jobs, devices, maps, entries }: ImportPlan): number {
  return [jobs.add, devices.add, maps.add, maps.next, entries.add].reduce((sum, { length }) => sum + length, 0)
}

function lines(plan: ImportPlan): string[] {
  const { jobs, devices, maps, entries } = plan
  const kinds: [ImportPlan['jobs'] | ImportPlan['devices'] | ImportPlan['maps'], string][] = [
    [jobs, 'job'],
    [devices, 'device'],
    [maps, 'version of form maps'],
  ]
  const said = kinds.flatMap(([change, one]) => {
    const many = one.startsWith('version') ? one.replace('version', 'versions') : `${one}s`
    return [
      change.add.length > 0 ? `${count(change.add.length, one, many)} will be added.` : '',
      change.same > 0 ? `${count(change.same, one, many)} ${change.same === 1 ? 'is' : 'are'} here already.` : '',
    ]
  })
  for (const job of jobs.kept) said.push(`${jobTitle(job)} is here with other content; yours stays.`)
  for (const device of devices.kept) said.push(`Device ${device.name} is here with other content; yours stays.`)
  for (const map of maps.next) {
    said.push(
      `Form map ${map.name} is here with other content; the file’s becomes its next version, yours stays below.`,
    )
  }
  if (entries.add.length > 0)
    said.push(`${count(entries.add.length, 'entry', 'entries')} will be added, after those that are here.`)
  if (entries.same > 0) said.push(`${count(entries.same, 'entry', 'entries')} of the file are here already.`)
  if (entries.refused) said.push(entries.refused)
  const told = said.filter(Boolean)
  return told.length > 0 ? told : ['The file is empty.']
}
