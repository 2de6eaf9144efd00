import type { Job } from '../../job/schema.ts'
import { listDevices } from '../../book/devices.ts'
import { jobTitle } from '../../job/job-title.ts'
import { downloadBlob } from '../parts/download-blob.ts'
import { fileName } from './file-name.ts'
import { hashOf } from './route.ts'
import { say } from '../../words/say.ts'

/** From a job to what others read of it: the report of its newest test, and a file of the open standard. */
export function JobReport({ job, run }: { job: Job; run: (work: () => Promise<unknown>) => void }) {
  const test = job.tests.at(-1)
  const save = async () => {
    const { hpxmlOf } = await import('../../book/hpxml/export.ts')
    const text = hpxmlOf(job, await listDevices())
    downloadBlob(fileName(jobTitle(job), 'xml'), new Blob([text], { type: 'application/xml' }))
  }
  return (
    <>
      {test && (
        <a class="b low" href={hashOf({ section: 'report', job: job.id, test: test.id })}>
          {say`Report`}
          <span class="vh">{say` of ${jobTitle(job)}`}</span>
        </a>
      )}
      <button type="button" class="b low" onClick={() => run(save)}>
        HPXML
        <span class="vh">{say` file of ${jobTitle(job)}`}</span>
      </button>
    </>
  )
}
