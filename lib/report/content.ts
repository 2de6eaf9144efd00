/** What stands in the report of a test, written out, for the page and for the PDF alike. */
import { isRegression } from '../job/edits.ts'
import { reduceTest } from '../job/reduce.ts'
import { testCheckNames } from '../job/checks.ts'
import { pointsLeftOut, reasonOf, type LeftOut } from '../job/left-out.ts'
import '../job/with-fans.ts'
import type { Device, Job, Test } from '../job/schema.ts'
import { knownTests, severalOf, worksOf, type KnownTest } from '../job/together.ts'
import { judge } from '../job/house-limit.ts'
import { checks as sheetChecks } from '../reduce/checks/index.ts'
import { curveOf, type Curve, type CurvePoint } from '../reduce/curve.ts'
import { decimalsOf, figureById, usualFlow, wordOf } from '../reduce/figures/index.ts'
import type { Sheet } from '../sheet/schema.ts'
import { symbol } from '../units/symbol.ts'
import { roleWords } from '../words/names.ts'
import { language, say, shown as words } from '../words/say.ts'
import { severalWords } from './several-words.ts'
import { fanWords } from './fan-words.ts'
import { zoneWords } from './zone-words.ts'
import { wordReading } from '../results/reading.ts'
import { boundText } from '../limits/index.ts'
import type { CheckLine, FigureLine, VerdictProps } from '../results/shown.ts'
import { halfUp, minus } from '../results/lines.ts'
import { unitOf } from '../results/verdict-lines.ts'
import { wordsAfter } from '../results/words-after.ts'
import { asRead, readingInLocale, wordsInLocale } from '../results/in-locale.ts'
import { barsOf, type Bars } from '../results/plot/bars.ts'
import { plotOf, type Plot } from '../results/plot/plot.ts'

/** The book's newest entry of the job, that an outside copy of its fingerprint anchors. */
export interface Anchor {
  number: number
  hash: string
  /** Whether it holds the sheet just as it stands here. */
  same: boolean
  /** Whether device or limit became another since: then the figures of that entry may be others than these. */
  moved?: boolean
}

export interface Content {
  title: string
  address: string
  role: string
  tested: string
  facts: { label: string; value: string }[]
  verdict: VerdictProps | undefined
  /** Why there are no figures. */
  waiting: string
  readings: { heads: [name: string, unit: string][]; rows: string[][]; foot: string[] }
  plot: Plot | undefined
  /** What the work brought, in the report of the test after it. */
  bars: Bars | undefined
  figures: FigureLine[]
  figuresNote: string
  /** What this test says together with others of the job: means of both directions, sums of systems. */
  several: string[]
  /** A sentence or two of each zone beside the house. */
  zones: string[]
  /** What the tester noted of the test. */
  notes: string[]
  limitHead: string
  checks: (CheckLine & { name: string })[]
  /** Sentences of the checks that want a look. */
  remarks: string[]
  cautions: string
  signer: { name: string; licence: string }
  fingerprint: string[]
  record: string[]
}

const procedures: Record<Test['sheet']['procedure'], string> = {
  'one-point': say`One point`,
  'two-point': say`Two points`,
  'astm-e779': 'ASTM E779',
  'iso-9972': 'ISO 9972',
  'astm-e3158': 'ASTM E3158',
}

/** What a page holds: the figures that codes, programs and reviewers ask for. */
const shown = {
  enclosure: [
    'air-changes-50',
    'flow-50',
    'flow-50-as-read',
    'flow-50-per-enclosure-area',
    'flow-75-per-enclosure-area',
    'effective-leakage-area',
    'equivalent-leakage-area',
    'specific-leakage-area',
    'leakage-exponent',
    'leakage-coefficient',
  ],
  ducts: [
    'duct-flow-25',
    'duct-flow-25-as-read',
    'duct-flow-25-per-floor-area',
    'duct-qn',
    'duct-share-of-air-handler',
    'leakage-exponent',
    'leakage-coefficient',
  ],
} as const

const mostRows = 10
const names = new Map([...sheetChecks.map(({ id, name }) => [id, name] as const), ...Object.entries(testCheckNames)])
const months = say`January February March April May June July August September October November December`.split(' ')

/** `25 February 2026`; what is no day stays as typed. */
export function dayInWords(iso: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso) ?? []
  const name = months[Number(month) - 1]
  return name === undefined ? iso : say`${Number(day)} ${name} ${year ?? ''}`
}

/** More does not fit on the one page. */
const longestNotes = 700

function notesOf({ notes }: Test): string[] {
  const text = notes.trim().replaceAll(/\s+/g, ' ')
  if (text === '') return []
  return text.length <= longestNotes ? [text] : [say`${text.slice(0, longestNotes)}… The rest stands in the job.`]
}

const withUnit = (text: string, unit: string): string => (text.trim() ? `${text.trim()} ${symbol(unit)}` : '')
const volumeWords = { net: say`net`, gross: say`gross` }
const listed = (...parts: string[]): string => parts.filter(Boolean).join(', ')

function facts(job: Job, test: Test, device: Device | undefined): Content['facts'] {
  const { building, tester, units } = job
  const { sheet } = test
  const source = building.areaSource && ` (${words(building.areaSource)})`
  const ranges = [...new Set(sheet.points.map(({ range }) => range.trim()).filter(Boolean))]
  const reading =
    sheet.reading === 'device'
      ? say`device pressure read`
      : sheet.flowBasis === 'indicated'
        ? say`flow indicated`
        : say`actual flow`
  const { temperature } = test.units
  const fans = sheet.reading === 'fans' ? (sheet.fans ?? []) : undefined
  return [
    { label: say`Permit`, value: listed(building.permit.trim(), building.program.trim()) },
    {
      label: say`Tester`,
      value: listed(tester.name.trim(), tester.licence.trim() && say`licence ${tester.licence.trim()}`),
    },
    { label: say`Company`, value: tester.company.trim() },
    {
      label: say`Procedure`,
      value: listed(
        procedures[sheet.procedure],
        words(sheet.direction),
        sheet.subject === 'ducts' ? (sheet.ductLeakage === 'outside' ? say`to outside` : say`total`) : '',
        words(test.stage),
      ),
    },
    {
      label: say`Floor area, volume${source}`,
      value: listed(
        withUnit(building.floorArea, `${units.length}2`),
        listed(
          withUnit(building.volume, `${units.length}3`),
          building.volumeBasis ? volumeWords[building.volumeBasis] : '',
        ),
      ),
    },
    {
      label: say`Enclosure area, height`,
      value: listed(withUnit(building.enclosureArea, `${units.length}2`), withUnit(building.height, units.length)),
    },
    {
      label:
        sheet.subject === 'ducts' ? say`Air in ducts, at device, elevation` : say`Air indoors, outdoors, elevation`,
      value: listed(
        withUnit(minus(sheet.indoor), temperature),
        withUnit(minus(sheet.outdoor), temperature),
        withUnit(building.elevation, units.length),
      ),
    },
    {
      label: say`Device`,
      value: fans
        ? say`${fans.length} fans together, their flows summed`
        : listed(
            device?.name.trim() ?? '',
            device?.serial.trim() ?? '',
            ranges.length > 0 ? say`range ${ranges.slice(0, 4).join(', ')}` : '',
            reading,
          ),
    },
  ].map(({ label, value }) => ({ label, value: value || say`not typed` }))
}

const signed = (value: number): string => (value >= 0.05 ? `+${halfUp(value, 1)}` : minus(halfUp(value, 1)))

function readingsOf(
  test: Test,
  sheet: Sheet | undefined,
  rows: { points: readonly number[]; apart: readonly number[] },
  curve: Curve | undefined,
  mean: string,
  devices: readonly Device[],
) {
  const { sheet: typed, units } = test
  const device = typed.reading === 'device'
  const decimals = decimalsOf(usualFlow(typed.subject), units.flow)
  const fit = isRegression(typed)
  const flow = symbol(units.flow)
  // A range belongs to a device: where none is named there is no column of them.
  const ranged = typed.reading !== 'flow' || typed.points.some(({ range }) => range.trim() !== '')
  const third: [string, string][] = ranged ? [[typed.reading === 'fans' ? say`Fans` : say`Range`, '']] : []
  const heads: [string, string][] = [
    ['', ''],
    [typed.subject === 'ducts' ? say`Ducts` : say`House`, 'Pa'],
    device ? [say`Device`, 'Pa'] : [say`Flow`, flow],
    ...third,
    ['ΔP', 'Pa'],
    [say`Leakage`, flow],
    ...(fit ? [[say`Off line`, '%'] as [string, string]] : []),
  ]
  const gone = pointsLeftOut(test)
  const found = new Map<number, CurvePoint>([
    ...rows.points.flatMap((row, at) => (curve?.points[at] ? [[row, curve.points[at]] as const] : [])),
    ...rows.apart.flatMap((row, at) => (curve?.apart[at] ? [[row, curve.apart[at]] as const] : [])),
  ])
  const listedRows = [...rows.points, ...gone.map(({ row }) => row)].toSorted((a, b) => a - b)
  const sums = fanSums(sheet, rows.points, decimals)
  const lines = listedRows.slice(0, mostRows).flatMap((row) => {
    const point = typed.points[row]
    const drawn = found.get(row)
    if (!point) return []
    const computed = drawn
      ? [halfUp(drawn.pressure, 1), halfUp(drawn.flow, decimals), ...(fit ? [signed(drawn.off)] : [])].map(asRead)
      : ['', '', ...(fit ? [''] : [])]
    const read = device ? point.devicePressure : point.flow
    const summed = typed.reading === 'fans' ? sums.get(row) : undefined
    const name = reasonOf(point) === '' ? String(row + 1) : `${row + 1} ×`
    const own = summed ?? [minus(read.trim()), ...(ranged ? [point.range.trim()] : [])]
    return [[name, minus(point.pressure.trim()), ...own, ...computed]]
  })
  const parts = [typed.baselineBefore, typed.baselineAfter].map((text) => text.trim().slice(0, 40).replaceAll('-', '−'))
  const foot = mean
    ? say`Baseline before ${parts[0] || say`none`}, after ${parts[1] || say`none`}, mean ${mean} Pa.`
    : say`No baseline typed.`
  const hidden = listedRows.length - mostRows
  const more = hidden > 0 ? say`${hidden} more readings are in the book.` : ''
  const air = sheet?.air
    ? say`Leakage at standard conditions.`
    : say`Leakage without air correction: temperatures not typed.`
  const foots = [listed(foot), [air, more].filter(Boolean).join(' '), ...fanWords(test, devices), ...leftWords(gone)]
  return { heads, rows: lines, foot: foots }
}

/** Of several fans, by row: the sum of their flows, and each of them. */
function fanSums(
  sheet: Sheet | undefined,
  rows: readonly number[],
  decimals: number,
): Map<number, [sum: string, each: string]> {
  return new Map(
    (sheet?.points ?? []).flatMap((point, at) => {
      if (!('fans' in point) || !point.fans) return []
      const [sum = '', ...each] = [point.flow, ...point.fans.map(({ flow }) => flow)].map((flow) =>
        asRead(halfUp(flow, decimals)),
      )
      return [[rows[at] ?? at, [sum, each.join(' + ')]]]
    }),
  )
}

/** Which readings the figures do not rest on, and why: a few of them in full. */
function leftWords(gone: readonly LeftOut[]): string[] {
  const lines = gone
    .slice(0, 4)
    .map(({ row, reason }) => say`× Point ${row + 1} is left out of the figures: ${reason.slice(0, 120)}.`)
  return gone.length > 4 ? [...lines, say`${gone.length - 4} more are left out; their reasons are in the job.`] : lines
}

/** A figure by its full name, with the word of the trade behind it. */
function named(line: FigureLine, unit: string, procedure: Test['sheet']['procedure']): FigureLine {
  const label = wordsAfter(procedure, wordOf(line.id, unit))
  const name = asRead(figureById(line.id)?.name ?? label)
  const full = `${name.charAt(0).toUpperCase()}${name.slice(1)}`
  return { ...line, name: full, detail: name.includes(label) && label.length > 1 ? '' : label }
}

/** The report of one test of a job. `anchor`: the entry that holds it; 'form': none yet, for it goes into a form first. */
export function reportOf(
  job: Job,
  test: Test,
  devices: readonly Device[],
  anchor: Anchor | 'form' | undefined,
  known: readonly KnownTest[] = knownTests(job, [...devices]),
): Content {
  const reduced = known.find((one) => one.test === test)?.reduced ?? reduceTest(job, test, [...devices])
  const written = language()
  const { sheet, report, points = [] } = reduced
  const judged = judge(job, test, report?.figures)
  const reading = readingInLocale(wordReading(job, test, reduced, undefined, judged), written)
  const { limit, withheld } = judged
  const curve =
    sheet && report
      ? curveOf(
          sheet,
          { onePointFactor: test.onePointFactor },
          reduced.apart.map(({ point }) => point),
        )
      : undefined
  const rows = { points: points.map(({ row }) => row), apart: reduced.apart.map(({ row }) => row) }
  const lines = new Map(reading.groups.flatMap((group) => group.lines).map((line) => [line.id, line]))
  const ids = new Set<string>([...(limit ? [limit.figure] : []), ...shown[test.sheet.subject]])
  const { building, tester } = job
  const street = [building.street.trim(), building.unit.trim()].filter(Boolean).join(' ')
  const device = devices.find(({ id }) => id === test.sheet.device)
  return {
    title: test.sheet.subject === 'ducts' ? say`Air leakage of the ducts` : say`Air leakage of the enclosure`,
    address:
      listed(street, building.town.trim(), building.state.trim(), building.postcode.trim()) || say`No address typed`,
    role: roleWords(test.role.trim()) || say`without a name`,
    tested: test.date ? say`Tested ${dayInWords(test.date)}` : say`No date typed`,
    facts: facts(job, test, device),
    verdict: reading.verdict,
    waiting: reading.waiting,
    readings: readingsOf(test, sheet, rows, curve, reading.mean, devices),
    plot: sheet && report && curve ? wordsInLocale(plotOf(sheet, report, curve, limit, rows), written) : undefined,
    bars:
      test.role.trim().toLowerCase() === 'after'
        ? wordsInLocale(barsOf(worksOf(known).find((work) => work.test.after.id === test.id)), written)
        : undefined,
    figures: [...ids].flatMap((id) => {
      const line = lines.get(id)
      return line ? [named(line, report?.figures[id]?.unit ?? '', test.sheet.procedure)] : []
    }),
    figuresNote: report?.fit
      ? say`± at 95 %; flows and areas with the instrument’s part, n and C from the fit alone`
      : say`± at 95 %, with the instrument’s part`,
    several: severalWords(severalOf(known), test, written),
    zones: zoneWords(test, written),
    notes: notesOf(test),
    limitHead: limit
      ? say`Limit: ${asRead(boundText(limit.value))} ${wordsAfter(test.sheet.procedure, unitOf(limit.figure, limit.unit))}`
      : withheld
        ? say`Limit: not for this test`
        : say`Limit: none chosen`,
    checks: reading.checks.map((check) => ({ ...check, name: names.get(check.id) ?? check.id })),
    remarks: reading.checks
      .filter(({ outcome }) => outcome === 'bad' || outcome === 'doubtful')
      .map(({ text }) => text),
    cautions: say`Check the edition your authority enforces; local codes and licensed practice come first. After tightening: combustion-safety and ventilation check. Appliances, dampers and vents were set back before leaving: ☐ yes. This page computes and records; it certifies nothing.`,
    signer: { name: tester.name.trim(), licence: tester.licence.trim() },
    ...anchored(anchor),
  }
}

/** What a report says of the entry that holds it. */
export const anchored = (anchor: Anchor | 'form' | undefined): Pick<Content, 'fingerprint' | 'record'> => ({
  fingerprint: typeof anchor === 'object' ? (anchor.hash.match(/.{1,8}/g) ?? []) : [],
  record: recordOf(anchor),
})

function recordOf(anchor: Anchor | 'form' | undefined): string[] {
  if (anchor === 'form') return [say`Made for a form; the entry of that fill`, say`keeps the SHA-256 of this file`]
  if (!anchor) return [say`Not in a book entry yet: a draft`]
  const kept = !anchor.same
    ? say`The sheet was typed in after this entry`
    : anchor.moved
      ? say`Device or limit changed after this entry`
      : say`Sheet as typed is kept in the book`
  return [say`Gapsum, book entry ${anchor.number}`, kept]
}
