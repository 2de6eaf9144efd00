import { extractText, getDocumentProxy } from 'unpdf'
import { describe, expect, test } from 'vitest'
import { demoJob } from '../../lib/job/demo.ts'
import { emptyTest, emptyZone } from '../../lib/job/empty.ts'
import { unitSets } from '../../lib/job/units.ts'
import { hashOf, routeOf } from '../../lib/view/book/route.ts'
import { type Content, dayInWords, reportOf } from '../../lib/report/content.ts'
import { logScale } from '../../lib/results/plot/log-scale.ts'
import { pdfOf } from '../../lib/report/pdf.ts'
import { box } from '../../lib/results/plot/plot.ts'
import { anchor, devices, eightPoints } from './report-fixtures.ts'

const now = new Date('2026-02-26T08:00:00Z')

const eight = (): Content => {
  const { job, test: one } = eightPoints()
  return reportOf(job, one, devices, anchor)
}

/** The PDF read back with another library. */
async function readBack(content: Content, paper: 'letter' | 'A4' = 'letter') {
  const { bytes, lost } = await pdfOf([content], paper, now)
  const document = await getDocumentProxy(new Uint8Array(bytes), { verbosity: 0 })
  const { totalPages, text } = await extractText(document, { mergePages: true })
  const page = await document.getPage(1)
  const size = page.getViewport({ scale: 1 })
  const items = (await page.getTextContent()).items.flatMap((item) => ('str' in item && item.str.trim() ? [item] : []))
  const beyond = items.filter(({ transform, width }) => {
    const [, rise, , , x, y] = transform as number[]
    return x! < 20 || y! < 20 || y! > size.height - 20 || (rise === 0 && x! + width > size.width - 20)
  })
  return {
    pages: totalPages,
    text: text.replaceAll(/\s+/g, ' '),
    lost,
    width: size.width,
    height: size.height,
    beyond: beyond.map(({ str }) => str),
  }
}

describe('what stands in a report', () => {
  test('figures, verdict and limit are those of the test', () => {
    const content = eight()
    expect(content.verdict).toMatchObject({ value: '2.85', unit: 'ACH50', verdict: { meets: true } })
    expect(content.figures[0]).toMatchObject({ name: 'Air changes per hour at 50 Pa', detail: 'ACH50', value: '2.85' })
    expect(content.limitHead).toBe('Limit: 3.0 ACH50')
    // The limit as a flow, by hand: 3.0 × 15,810 / 60.
    expect(content.plot?.limit?.text).toBe('limit at 50 Pa: 790.5')
    expect(content.plot?.words).toContain('8 points')
  })

  test('readings stand as typed, with how far each lies off the line', () => {
    const { rows, foot } = eight().readings
    expect(rows).toHaveLength(8)
    expect(rows[0]).toEqual(['1', '−60.6', '872', 'middle', '59.6', '835', '−0.7'])
    // By definition of least squares the logarithms of the distances add up to nothing.
    const off = rows.reduce((sum, cells) => sum + Math.log(1 + Number(cells.at(-1)!.replace('−', '-')) / 100), 0)
    expect(Math.abs(off)).toBeLessThan(8 * 0.0006)
    expect(foot[0]).toBe('Baseline before −1.1, after −0.9, mean −1.0 Pa.')
  })

  test('says what is kept, and that it certifies nothing', () => {
    const content = eight()
    expect(content.record).toEqual(['Gapsum, book entry 231', 'Sheet as typed is kept in the book'])
    expect(content.fingerprint.join('')).toBe(anchor.hash)
    expect(content.cautions).toContain('it certifies nothing')
    const { job, test: one } = eightPoints()
    expect(reportOf(job, one, devices, undefined).record).toEqual(['Not in a book entry yet: a draft'])
    expect(reportOf(job, one, devices, 'form').record.join(' ')).toBe(
      'Made for a form; the entry of that fill keeps the SHA-256 of this file',
    )
    expect(reportOf(job, one, devices, { ...anchor, same: false }).record[1]).toContain('after this entry')
  })

  test('names the zones beside the house, with what is doubtful; both on page and PDF', async () => {
    const { job, test: one } = eightPoints()
    const attic = {
      ...emptyZone(),
      name: 'Attic',
      houseZone: '-30',
      zoneOutdoors: '-20',
      closed: '2000',
      opened: '2400',
    }
    const garage = { ...emptyZone(), name: '', houseZone: '48', zoneOutdoors: '3' }
    const content = reportOf(job, { ...one, zones: [attic, garage, emptyZone()] }, devices, anchor)
    // By hand in tests/job/zones.test.ts; (3 / 48)^0.65 = 0.165.
    expect(content.zones).toEqual([
      'Attic: −30 Pa between house and zone, −20 Pa between zone and outdoors, the house at 50 Pa. Leak ratio, house to zone over zone to outdoors: 0.77. At 50 Pa house to zone 685 cfm, zone to outdoors 891 cfm; through the zone 491 cfm.',
      'Zone 2: 48 Pa between house and zone, 3 Pa between zone and outdoors, the house at 50 Pa. Leak ratio, house to zone over zone to outdoors: 0.16. A pressure below 5 Pa says little about the leaks: a small error changes the ratio much. Average for longer, or open a path on the other side and measure again.',
    ])
    const { text, pages, beyond } = await readBack(content)
    expect([pages, beyond]).toEqual([1, []])
    expect(text).toContain('Zones beside the house')
    expect(text).toContain('Leak ratio, house to zone over zone to outdoors: 0.77.')
    expect(eight().zones).toEqual([])
  })

  test('without readings it says what is missing and draws nothing', () => {
    const job = demoJob()
    const content = reportOf(job, emptyTest('final', 'enclosure', unitSets.IP), [], undefined)
    expect(content.plot).toBeUndefined()
    expect(content.verdict).toBeUndefined()
    expect(content.waiting).toContain('Type the house pressure')
  })

  test('a day is written out, and what is none stays', () => {
    expect(dayInWords('2026-02-25')).toBe('25 February 2026')
    expect(dayInWords('spring')).toBe('spring')
    expect(dayInWords('2026-13-01')).toBe('2026-13-01')
  })
})

describe('the plot', () => {
  test('everything lies within its frame, and the band holds the line', () => {
    for (const one of demoJob().tests) {
      const { plot } = reportOf(demoJob(), one, devices, undefined)
      const places = [...plot!.marks.map(({ at }) => at), ...plot!.line, plot!.result!.at]
      for (const [x, y] of places) {
        expect(x).toBeGreaterThanOrEqual(box.left - 0.01)
        expect(x).toBeLessThanOrEqual(box.right + 0.01)
        expect(y).toBeGreaterThanOrEqual(box.top - 0.01)
        expect(y).toBeLessThanOrEqual(box.bottom + 0.01)
      }
      const [start] = plot!.line
      expect(plot!.band[0]![1]).toBeLessThan(start[1])
      expect(plot!.band.at(-1)![1]).toBeGreaterThan(start[1])
    }
  })

  test('a power of the pressure is a straight line: equal ratios are equal distances', () => {
    const scale = logScale(10, 1000, 0, 100, 8)
    expect(scale.at(100)).toBeCloseTo(50, 12)
    expect(scale.at(40) - scale.at(20)).toBeCloseTo(scale.at(80) - scale.at(40), 12)
  })

  test('ticks are round, inside and not too many', () => {
    for (const [from, to] of [
      [16, 73],
      [350, 1000],
      [0.4, 2],
      [10, 100_000],
      [49, 51],
    ] as const) {
      const { ticks } = logScale(from, to, 0, 100, 8)
      expect(ticks.length).toBeLessThanOrEqual(8)
      for (const tick of ticks) expect(tick >= from && tick <= to).toBe(true)
    }
  })
})

describe('the PDF of a report', () => {
  test('is one page whose text can be selected and holds what the report holds', async () => {
    const content = eight()
    const { pages, text, lost, width, height, beyond } = await readBack(content)
    expect(beyond).toEqual([])
    expect([pages, width, height]).toEqual([1, 612, 792])
    for (const { name, value } of content.figures) {
      expect(text).toContain(name)
      expect(text).toContain(value)
    }
    for (const { value } of content.facts) expect(text).toContain(value.split(' ')[0])
    for (const { name } of content.checks) expect(text).toContain(name)
    expect(text).toContain('Meets the limit, 3.0 ACH50')
    expect(text).toContain('limit at 50 Pa: 790.5')
    expect(text).toContain('it certifies nothing')
    expect(text).toContain(anchor.hash.slice(0, 8))
    expect(text).toContain(anchor.hash.slice(-8))
    expect(text).toContain('Sheet as typed is kept in the book')
    expect(text).toContain('Ines Halvorsen')
    expect(lost).toEqual([])
  })

  test('stays one page with every cell as long as it can be', async () => {
    const { job, test: one } = eightPoints()
    const long = 'Very long words of a permit '.repeat(50)
    const point = one.sheet.points[0]!
    const points = Array.from({ length: 200 }, (_, at) => ({
      ...point,
      pressure: `-${20 + at / 4}`,
      flow: String(400 + at * 3),
    }))
    const full = {
      ...job,
      building: { ...job.building, street: long, permit: long },
      tester: { ...job.tester, name: long, company: 'x'.repeat(3000), licence: long },
    }
    const content = reportOf(full, { ...one, role: long, sheet: { ...one.sheet, points } }, devices, anchor)
    const { pages, text, beyond } = await readBack(content, 'A4')
    expect(pages).toBe(1)
    expect(beyond).toEqual([])
    expect(text).toContain('190 more readings are in the book.')
    expect(text).toContain(anchor.hash.slice(-8))
  })

  test('takes any letters, and names those that its fonts lack', async () => {
    const { job, test: one } = eightPoints()
    const named = { ...job, tester: { ...job.tester, name: 'Zoë Łęcka 李 \u{1F600}\n\u0000' } }
    const { text, lost } = await readBack(reportOf(named, one, devices, anchor))
    expect(text).toContain('Zoë ?ecka ?')
    expect(lost).toEqual(expect.arrayContaining(['Ł', 'ę', '李']))
  })

  test('of a test without figures is a page that says so', async () => {
    const { pages, text } = await readBack(
      reportOf(demoJob(), emptyTest('final', 'ducts', unitSets.SI), [], undefined),
      'A4',
    )
    expect(pages).toBe(1)
    expect(text).toContain('No figures yet.')
  })
})

test('an address names a report by job, test and entry', () => {
  const route = { section: 'report', job: 'a b', test: 'demo-duct system 1', of: 7 } as const
  expect(routeOf(hashOf(route))).toEqual(route)
  expect(routeOf('#report?entry=x')).toEqual({ section: 'report' })
})
