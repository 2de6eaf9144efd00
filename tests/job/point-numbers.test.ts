/** The numbers of points in texts are those of the typed rows, in any language. */
import { expect, test, vi } from 'vitest'
import { reduceTest } from '../../lib/job/reduce.ts'
import { fakeDevices, fakeJob, fakeTest, points } from './fake.ts'

/** Texts in another language: what is `point` in English is `punto`. */
vi.mock(import('../../lib/words/say.ts'), async (original) => {
  const real = await original()
  const say = (texts: TemplateStringsArray, ...values: (string | number)[]) => {
    const other = texts.map((text) => text.replaceAll('oint', 'unto'))
    return real.say(Object.assign(other, { raw: texts.raw }), ...values)
  }
  return { ...real, say }
})

const reportOf = (sheet: Parameters<typeof fakeTest>[0]) => reduceTest(fakeJob(), fakeTest(sheet), fakeDevices()).report

test('one point: the note and the working name the row, when the first is left out', () => {
  const report = reportOf({ points: points(['-38.7', ''], ['-51.3', '790'], ['-26.2', '502']) })
  expect(report?.figures['flow-50']?.note).toContain('Uses punto 2,')
  const across = report?.working.find(({ step }) => step === 'Pressure across the leaks')
  expect(across?.values).toBe('2: P = -51.3 Pa; 3: P = -26.2 Pa')
  expect(across?.result).toMatch(/^2: .* Pa; 3: .* Pa$/)
})

test('repeats are named by their rows, in the note and in the working', () => {
  const report = reportOf({ points: points(['', ''], ['-51.3', '790'], ['-38.7', ''], ['-50.1', '778']) })
  expect(report?.figures['flow-50']?.note).toContain('(punto 2, punto 4)')
  const mean = report?.working.find(({ step }) => step.startsWith('Mean of repeated'))
  expect(mean?.values).toMatch(/^punto 2: .*; punto 4: /)
})

test('a regression: the check names the row that is off, as do the numbers of the working', () => {
  const rows = ['60', '50', '40', '30', '20', '12'].map((pressure) => {
    // 80 cfm/Pa^0.65, the fourth point a fifth too high.
    const flow = 80 * Number(pressure) ** 0.65 * (pressure === '30' ? 1.2 : 1)
    return [`-${pressure}`, flow.toFixed(0)] as [string, string]
  })
  const report = reportOf({ procedure: 'astm-e779', points: points(['-55', ''], ...rows) })
  const check = report?.checks.find(({ id }) => id === 'outlier')
  expect(check?.text).toContain('Punto 5 stands')
  expect(check?.found).toContain('punto 5,')
  expect(report?.working.find(({ step }) => step === 'Line through the puntos')?.values).toMatch(/^2: .*; 7: /)
})
