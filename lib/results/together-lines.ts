/** What tests come to together, written for the screen. */
import type { Test } from '../job/schema.ts'
import type { Several, Together, Work } from '../job/together.ts'
import { decimalsOf } from '../reduce/figures/index.ts'
import type { FigureValue, Report } from '../reduce/report.ts'
import { symbol } from '../units/symbol.ts'
import type { CheckLine, FigureGroup, FigureLine, VerdictProps } from './shown.ts'
import { barsOf, type Bars } from './plot/bars.ts'
import { figureLine, halfUp, marginOf, rangeOf } from './lines.ts'
import { roleWords } from '../words/names.ts'
import { language, say, shown } from '../words/say.ts'
import { severalVerdict } from './several-verdict.ts'
import { togetherInLocale } from './in-locale.ts'

export interface TogetherWords {
  /** In a line: `CFM50 down 1,050 cfm, 42.3 %`. */
  summary: string
  groups: FigureGroup[]
  /** Of several tests that are set against one limit. */
  verdicts: VerdictProps[]
  checks: CheckLine[]
  bars: Bars[]
}

/** Nothing while no tests belong together. */
export function togetherWords({ works, several }: Together): TogetherWords | undefined {
  const groups = [...works.map(workGroup), ...several.map(severalGroup)]
  if (groups.length === 0) return undefined
  const words = {
    summary: works.map(workSummary).join('; '),
    groups,
    verdicts: several.flatMap(severalVerdict),
    checks: several.flatMap(({ name, checks }) => checks.map((check) => ({ ...check, id: `${name} ${check.id}` }))),
  }
  const written = togetherInLocale({ ...words, bars: works.flatMap((work) => barsOf(work) ?? []) }, language())
  // Names are the owner's and stay as typed.
  const names = several.map(({ name }) => roleWords(name)).join('; ')
  return { ...written, summary: written.summary || names }
}

const PERCENT_DECIMALS = 1

function workSummary({ of, figure, absolute, percent }: Work): string {
  const decimals = decimalsOf(figure, absolute.unit)
  const by = halfUp(Math.abs(absolute.value), decimals)
  const change = `${by} ${symbol(absolute.unit)}, ${halfUp(Math.abs(percent.value), PERCENT_DECIMALS)} %`
  return absolute.value < 0 ? say`${shown(of)} up ${change}` : say`${shown(of)} down ${change}`
}

function workLine(
  id: string,
  name: string,
  found: FigureValue,
  decimals: number,
  steps: Report['working'],
): FigureLine {
  const interval = rangeOf(found, decimals)
  return {
    id: `together-${id}`,
    name,
    detail: '',
    value: halfUp(found.value, decimals),
    margin: marginOf(found, decimals),
    interval: interval && say`95 % interval ${interval}`,
    unit: symbol(found.unit),
    note: found.note ?? '',
    steps,
  }
}

const inPercent = (step: Report['working'][number]): boolean => step.for.includes('reduction-percent')

const standards: Partial<Record<Test['sheet']['procedure'], string>> = {
  'astm-e779': 'ASTM E779',
  'iso-9972': 'ISO 9972',
  'astm-e3158': 'ASTM E3158',
}

/** Which two tests are compared, by what they have in common, and what they have not. */
function kindOf({ test: { after }, differ }: Work): string {
  const { sheet, stage } = after
  const ducts = sheet.subject === 'ducts'
  const common = [
    ducts ? (sheet.ductLeakage === 'outside' ? say`ducts, to outside` : say`ducts, total`) : say`house`,
    differ.includes('direction') ? '' : shown(sheet.direction),
    differ.includes('procedure') ? '' : (standards[sheet.procedure] ?? shown(sheet.procedure)),
    ducts && !differ.includes('stage') ? shown(stage) : '',
  ]
  return common.filter(Boolean).join(', ')
}

const cautions = {
  direction: say`The two tests were made in opposite directions: leaks that open one way only are in one of them.`,
  procedure: say`The two tests follow different procedures.`,
  stage: say`The two tests were made at different stages of the work.`,
}

function workGroup(work: Work, at: number): FigureGroup {
  const { before, after, of, figure, absolute, percent, working, differ } = work
  const care = differ.map((name) => cautions[name]).join(' ')
  const told = (found: FigureValue): FigureValue => ({ ...found, note: [care, found.note].filter(Boolean).join(' ') })
  const [decimals, steps] = [decimalsOf(figure, absolute.unit), working.filter((step) => !inPercent(step))]
  return {
    title: say`${roleWords(before)} to ${roleWords(after)}: ${kindOf(work)}`,
    lines: [
      workLine(`${at}-reduction`, say`Reduction of ${shown(of)}`, told(absolute), decimals, steps),
      workLine(
        `${at}-reduction-percent`,
        say`Reduction in percent`,
        told(percent),
        PERCENT_DECIMALS,
        working.filter(inPercent),
      ),
    ],
  }
}

/** The ids stand in the page beside those of the open test, so they are made different. */
const severalGroup = (one: Several, index: number): FigureGroup => ({
  title: roleWords(one.name),
  lines: Object.entries(one.figures).map(([id, found]) =>
    Object.assign(figureLine(id, found, one), { id: `together-${index}-${id}` }),
  ),
})
