/** Numbers with three digits after a mark, read beside numbers that tell which mark is the decimal one. */
import { describe, expect, test } from 'vitest'
import { readTest } from '../../lib/job/read.ts'
import { switchTestUnits, unitSets } from '../../lib/job/units.ts'
import { marksOf } from '../../lib/units/marks.ts'
import { fakeJob, fakeTest } from './fake.ts'

const rows = (...cells: [string, string][]) =>
  fakeTest({ points: cells.map(([pressure, flow]) => ({ pressure, flow, devicePressure: '', range: '' })) })

function read(...cells: [string, string][]) {
  const { sheet, problems } = readTest(fakeJob(), rows(...cells), [])
  return {
    points: sheet?.points.map((point) => [point.pressure, 'flow' in point ? point.flow : undefined]),
    problems: problems.flatMap(({ path, code }) => (path.startsWith('points') ? [`${path} ${code}`] : [])),
  }
}

describe('the marks of a row', () => {
  test('among decimal commas a point before three digits parts thousands', () => {
    expect(read(['-50,2', '1.230'])).toEqual({ points: [[-50.2, 1230]], problems: [] })
    expect(read(['−50,25', '12.345'])).toEqual({ points: [[-50.25, 12_345]], problems: [] })
  })

  test('a row that tells nothing goes by the other rows', () => {
    expect(read(['-50,2', '1.230,5'], ['-40', '1.100'])).toEqual({
      points: [
        [-50.2, 1230.5],
        [-40, 1100],
      ],
      problems: [],
    })
  })

  test('it asks where the marks do not decide', () => {
    expect(read(['-50,2', '1,230']).problems).toEqual(['points.0.flow two-ways'])
    expect(read(['-50,2', '1.230'], ['-40.5', '1.100']).problems).toEqual([])
    expect(read(['-50,2', '999.5'], ['-40', '1.100']).problems).toEqual(['points.1.flow two-ways'])
  })

  test('decimal points leave everything as it was', () => {
    expect(read(['-50.2', '1,230'], ['-40', '1,100'])).toEqual({
      points: [
        [-50.2, 1230],
        [-40, 1100],
      ],
      problems: [],
    })
    expect(read(['50', '1.230']).points).toEqual([[50, 1.23]])
  })

  test('another unit of flow converts what was meant, and is read back as that', () => {
    const typed = { ...rows(['-50,2', '1.230']), units: unitSets.SI }
    const switched = switchTestUnits(typed, unitSets.IP)
    const [point] = readTest(fakeJob(), switched, []).sheet?.points ?? []
    // 1 cfm is 1.69901 m3/h (NIST SP 811, B.9).
    expect(point && 'flow' in point ? point.flow * 1.699_01 : 0).toBeCloseTo(1230, 0)
    expect(switchTestUnits(switched, unitSets.SI).sheet.points[0]?.flow).toBe('1.230')
  })
})

test('units behind a number and signs before it tell nothing of marks', () => {
  expect(
    [['-50,2 Pa'], ['0,650'], ['1.230,5'], ['1 020'], ['1,230'], ['50.2', '1,5'], ['1,230.5 cfm'], []].map(marksOf),
  ).toEqual(['comma', 'comma', 'comma', undefined, undefined, 'both', 'point', undefined])
})
