/** Writes a job and a fill into the book, inside a page of the extension. */
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { getDevice, saveDevice } from '../../lib/book/devices.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { saveMap } from '../../lib/book/maps.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { context, fakeDevice, fakeFill, fakeLine, fakeMap } from './fake.ts'
import { html } from './hostile.ts'

export async function write(): Promise<void> {
  const job = await saveJob(demoJob())
  await saveMap(fakeMap())
  const page = { ...fakeFill('a').page, title: html }
  await startFill(fakeFill('a', { job: { id: job.id, name: '14 Tannery Row, Marrowby' }, page }), context)
  await addFillLine('a', fakeLine('flow', { note: html }))
  await endFill('a')
}

export const device = () => saveDevice(fakeDevice())

/** The coefficient of the device's first range, as it is kept now. */
export const coefficient = async () => (await getDevice(fakeDevice().id))?.ranges[0]?.coefficient
