/** Fills the lists of the book, inside a page of the extension. */
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { saveDevice } from '../../lib/book/devices.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { addNote } from '../../lib/book/notes.ts'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { today } from '../../lib/job/empty.ts'
import { context, fakeFill, fakeLine } from './fake.ts'

async function fill(id: string, job: { id: string; name: string }): Promise<number> {
  await startFill(fakeFill(id, { job }), context)
  await addFillLine(id, fakeLine('flow'))
  return (await endFill(id)).number
}

/** Three fills: one record to be kept until a day that has passed, one until next week, one for long. */
export async function records(): Promise<void> {
  const job = { id: 'job-1', name: '14 Tannery Row' }
  const next = today(new Date(Date.now() + 7 * 86_400_000))
  for (const keepUntil of ['2025-03-01', next, '2099-01-01']) {
    const of = await fill(`fill ${keepUntil}`, job)
    await addNote(
      { kind: 'follow-up', job, of, status: 'accepted', reason: '', confirmation: '', due: '', keepUntil, text: '' },
      '0.1.0',
    )
  }
}

/** So many jobs with two tests each; the last ones are filled in. */
export async function jobs(size: number): Promise<void> {
  await saveDevice(demoDevice())
  for (let at = 0; at < size; at++) {
    const demo = demoJob()
    const job = await saveJob({
      ...demo,
      id: `job-${at}`,
      building: { ...demo.building, street: `${at} Tannery Row` },
      tester: { ...demo.tester, name: 'Ines Halvorsen', company: 'Bellwether Lane Testing' },
    } as typeof demo)
    if (at >= size - 5) await fill(`fill ${at}`, { id: job.id, name: job.building.street })
  }
}
