/** The reports of a job as PDF, for the file controls of forms. Loaded when a form map asks for one. */
import { toBase64 } from '../book/base64.ts'
import type { Material } from '../form/material.ts'
import type { Device, Job } from '../job/schema.ts'
import { knownTests } from '../job/together.ts'
import { anchorOf, newestFill } from './anchor.ts'
import { reportOf } from './content.ts'
import { paperOf, pdfOf } from './pdf.ts'
import { say } from '../words/say.ts'

/**
 * The material with the bytes of those of its reports that are wanted.
 * @param wanted keys of `material.files`; others are passed over
 */
export async function withReports(
  material: Material,
  job: Job,
  devices: readonly Device[],
  wanted: ReadonlySet<string>,
): Promise<Material> {
  const files = { ...material.files }
  const entry = await newestFill(job.id)
  const pages = knownTests(job, [...devices]).map(({ test, key }) => ({ test, key }))
  for (const [id, file] of Object.entries(files)) {
    if (!wanted.has(id)) continue
    const tests = pages.filter(({ key }) => file.group === '' || key === file.group).map(({ test }) => test)
    const [first] = tests
    if (!first) continue
    const contents = tests.map((test) => reportOf(job, test, devices, anchorOf(entry, job, test, devices) ?? 'form'))
    const { bytes, lost } = await pdfOf(contents, paperOf(first))
    const size = say`${Math.max(1, Math.round(bytes.byteLength / 1000))} kB, made from the job as it stands`
    const without = lost.length > 0 && say`the letters ${lost.slice(0, 10).join(' ')} are not in its fonts`
    files[id] = { ...file, bytes: toBase64(bytes), note: [size, without].filter(Boolean).join('; ') }
  }
  return { ...material, files }
}
