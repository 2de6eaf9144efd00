/** The job as it is read where numbers have a decimal comma. */
import type { Job, Test } from '../job/schema.ts'
import { marksOf } from '../results/in-locale.ts'
import { sizeCells } from './typed.ts'

/** Typed numbers with a decimal comma, and points between thousands, as the reader of cells takes them. */
const plain = (text: string): string =>
  text.replaceAll(/(?<=\d)[.'’](?=\d{3}(?!\d))/g, '').replaceAll(/,(?=\d)|(?<=\d),/g, '.')

const cells = <T extends object>(from: T, keys: readonly (keyof T)[]): T => ({
  ...from,
  ...Object.fromEntries(keys.flatMap((key) => (from[key] === undefined ? [] : [[key, plain(String(from[key]))]]))),
})

export function jobFromLocale(job: Job, locale: string): Job {
  if (marksOf(locale).decimal !== ',') return job
  return {
    ...job,
    building: cells(job.building, sizeCells),
    tests: job.tests.map((test): Test => {
      const sheet = cells(test.sheet, [
        'baselineBefore',
        'baselineAfter',
        'indoor',
        'outdoor',
        'barometer',
        'exponent',
        'exponentUncertainty',
        'pressurePercent',
        'pressureFloor',
        'flowPercent',
        'baselineSeconds',
        'readingSeconds',
        'pressureScatter',
        'airHandlerFlow',
      ])
      const points = sheet.points.map((point) => cells(point, ['pressure', 'flow', 'devicePressure']))
      return { ...cells(test, ['instrumentFigure', 'ownLimit']), sheet: { ...sheet, points } }
    }),
  }
}
