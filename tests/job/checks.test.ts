import { describe, expect, test } from 'vitest'
import { testCheckNames, testChecks } from '../../lib/job/checks.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import type { Device, Test, TypedSheet } from '../../lib/job/schema.ts'
import { fakeDevices, fakeJob, fakeTest, points } from './fake.ts'

function demo() {
  const { sheet, report } = reduceTest(fakeJob(), fakeTest(), fakeDevices())
  if (!sheet || !report) throw new Error('the demo job has no report')
  return { sheet, figures: report.figures }
}
const known = demo()

function check(id: string, overrides: Partial<Test>, device: Partial<Device> = {}) {
  const found = testChecks({ ...known, test: fakeTest({}, overrides) }, fakeDevices(device)).find(
    (one) => one.id === id,
  )
  return found && `${found.outcome}: ${found.text} ${found.found ?? ''}`.trim()
}

const ofPair = (sheet: Partial<TypedSheet>, overrides: Partial<Test> = {}) => {
  const job = fakeJob()
  const after = fakeTest(sheet, overrides)
  const { checks = [] } = reduceTest(job, after, fakeDevices()).report ?? {}
  const found = checks.find(({ id }) => id === 'before-after')
  return found && `${found.outcome}: ${found.text} ${found.found ?? ''}`.trim()
}

const saidOfLeftOut = (overrides: Partial<TypedSheet>) => {
  const { checks = [] } = reduceTest(fakeJob(), fakeTest(overrides), fakeDevices()).report ?? {}
  const one = checks.find(({ id }) => id === 'left-out')
  return one && `${one.outcome}: ${one.text} ${one.found}`
}

const saidOfDirections = (one: Test, ...others: Test[]) => {
  const { checks = [] } = reduceTest({ ...fakeJob(), tests: [one, ...others] }, one, fakeDevices()).report ?? {}
  return checks.filter(({ id }) => id === 'both-directions').map(({ outcome, text }) => `${outcome}: ${text}`)
}

describe('checks beside the sheet', () => {
  test('they stand in the report, each with a heading', () => {
    const ids = reduceTest(fakeJob(), fakeTest(), fakeDevices()).report?.checks.map(({ id }) => id) ?? []
    expect(ids.slice(-4)).toEqual(Object.keys(testCheckNames).filter((id) => id !== 'left-out'))
    expect(new Set(ids).size).toBe(ids.length)
  })

  test('points left out are named with their reasons, and only those that have one', () => {
    const [first, second, third] = fakeTest().sheet.points
    const sheet = (reason: string, other = ''): Partial<TypedSheet> => ({
      points: [first!, { ...second!, leftOut: reason }, { ...third!, leftOut: other }],
    })
    expect(saidOfLeftOut(sheet(''))).toBeUndefined()
    expect(saidOfLeftOut(sheet('  '))).toBeUndefined()
    expect(saidOfLeftOut(sheet('a door slammed', 'gust'))).toMatchInlineSnapshot(
      `"doubtful: Left out of every figure: point 2 (“a door slammed”), point 3 (“gust”). The readings stay in the job and the report; whoever reviews the test decides whether the reason holds. 2 left out"`,
    )
  })

  test('ASTM E779 asks for both directions, or for the reason', () => {
    const rows = points(
      ['-60', '1210'],
      ['-50', '1075'],
      ['-40', '930'],
      ['-30', '770'],
      ['-20', '590'],
      ['-10', '380'],
    )
    const line: Partial<TypedSheet> = { procedure: 'astm-e779', points: rows }
    const one = fakeTest(line, { id: 'one', role: 'final' })
    expect(saidOfDirections(one)).toMatchInlineSnapshot(`
      [
        "doubtful: One direction only; ASTM E779 asks for both, or for the reason in the report. Add a test of the other direction with the same role, or say in the notes why not.",
      ]
    `)
    const up = rows.map((row) => Object.assign({}, row, { pressure: row.pressure.slice(1) }))
    const pressurized: Partial<TypedSheet> = { ...line, points: up, direction: 'pressurize' }
    const other = fakeTest(pressurized, { id: 'two', role: ' Final' })
    expect(saidOfDirections(one, other)).toEqual(['good: The house was tested in both directions.'])
    expect(saidOfDirections(other, one)).toEqual(['good: The house was tested in both directions.'])
    // Another role, the same direction, and a test without a reading are not the other one.
    for (const not of [
      fakeTest(pressurized, { id: 'two', role: 'before' }),
      fakeTest(line, { id: 'two', role: 'final' }),
      fakeTest({ ...pressurized, points: points(['', '']) }, { id: 'two', role: 'final' }),
      fakeTest({ ...pressurized, subject: 'ducts' }, { id: 'two', role: 'final' }),
    ])
      expect(saidOfDirections(one, not)[0]).toMatch(/^doubtful/)
    expect(saidOfDirections({ ...one, notes: 'The attic hatch lifts when pressurizing.' })).toMatchInlineSnapshot(`
      [
        "not checked: One direction only; ASTM E779 asks for both, or for the reason in the report. Check that the notes say why.",
      ]
    `)
    expect(saidOfDirections(fakeTest({ ...line, procedure: 'iso-9972' }))).toEqual([])
  })

  test('the calibration is compared with the day of the test', () => {
    expect(check('calibration', {})).toMatchInlineSnapshot(
      `"doubtful: “Fan 2” was 7 days past its date. Enter the new certificate under devices, or say why in the notes. 7 days past"`,
    )
    expect(check('calibration', { date: '2026-02-04' })).toMatchInlineSnapshot(
      `"good: “Fan 2” was within its calibration. tested 2026-02-04"`,
    )
    expect(check('calibration', { date: '2025-02-01' })).toMatchInlineSnapshot(
      `"doubtful: “Fan 2” was calibrated after this test. Check both dates. 2025-02-04"`,
    )
    expect(check('calibration', {}, { calibrated: '' })).toMatchInlineSnapshot(
      `"not checked: “Fan 2”: no date and interval of calibration. Type both from its certificate, under devices."`,
    )
    expect(check('calibration', { date: '' })).toMatchInlineSnapshot(
      `"not checked: Type the date of the test, to compare with the calibration."`,
    )
  })

  test('a month too short for the day ends the interval on its last day', () => {
    const device = { calibrated: '2025-08-31', intervalMonths: '6' }
    expect(check('calibration', { date: '2026-02-28' }, device)).toContain('good')
    expect(check('calibration', { date: '2026-03-01' }, device)).toContain('1 day past')
  })

  test('the instrument’s own figure', () => {
    expect(check('instrument-figure', { instrumentFigure: '785' })).toMatchInlineSnapshot(
      `"good: The instrument’s own figure agrees with the readings. 785 cfm, 0.2 % off"`,
    )
    expect(check('instrument-figure', { instrumentFigure: '754' })).toMatchInlineSnapshot(
      `"doubtful: The instrument’s own figure agrees with CFM50 after the air correction, not with the readings as typed. Check whether the typed flows were corrected already. 754 cfm, 4.2 % off"`,
    )
    expect(check('instrument-figure', { instrumentFigure: '3.0' })).toMatchInlineSnapshot(
      `"bad: The instrument’s own figure differs from the readings. Check the digits, the range and the baseline. 3.0 cfm, 99.6 % off"`,
    )
    expect(check('instrument-figure', { instrumentFigure: '' })).toBeUndefined()
  })

  test('strong wind is doubtful, and wind that nobody noted is not checked', () => {
    expect(check('wind', { wind: '' })).toMatchInlineSnapshot(`"not checked: Note the wind of the test."`)
    expect(check('wind', { wind: 'windy' })).toMatchInlineSnapshot(
      `"doubtful: Wind shakes the readings. Take longer averages and more baselines, or test in calmer weather. windy"`,
    )
    expect(check('wind', { wind: 'calm' })).toMatchInlineSnapshot(`"good: Little wind. calm"`)
  })

  test('the test after the work is compared with the one before it', () => {
    expect(ofPair({})).toMatchInlineSnapshot(
      `"good: It leaks less than before, and both tests were made alike. CFM50 1445 before, 754 after"`,
    )
    expect(ofPair({ points: points(['-50.8', '1501']) })).toMatchInlineSnapshot(
      `"bad: The readings are the same as those of the test before. Type what was read after the work. CFM50 1445 before, 1441 after"`,
    )
    expect(ofPair({ points: points(['-50.8', '1600']) })).toMatchInlineSnapshot(
      `"doubtful: It leaks more than before. Look for a window, hatch or damper left open, and for a slip in either test. CFM50 1445 before, 1536 after"`,
    )
    expect(ofPair({}, { date: '2026-01-11' })).toMatchInlineSnapshot(
      `"doubtful: This test after the work is dated earlier than the one before it. Check both dates and roles. 2026-01-12 before, 2026-01-11 after"`,
    )
    expect(ofPair({}, { date: '2026-01-12' })).toMatch(/^good/)
    expect(ofPair({ direction: 'pressurize', points: points(['50', '790']) })).toMatchInlineSnapshot(
      `"doubtful: The direction is another than in the test before, which may pass for a change of the leaks. Test both alike, or say so in the notes. depressurize before, pressurize after"`,
    )
    expect(ofPair({}, { role: 'final' })).toBeUndefined()
    expect(reduceTest({ ...fakeJob(), tests: [] }, fakeTest(), []).report?.checks.map(({ id }) => id)).not.toContain(
      'before-after',
    )
  })
})
