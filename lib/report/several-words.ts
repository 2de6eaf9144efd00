/** What the test says together with others of the job, written out for its report. */
import type { Test } from '../job/schema.ts'
import type { Several } from '../job/together.ts'
import { roleWords } from '../words/names.ts'
import { say } from '../words/say.ts'
import { verdictLines } from '../results/verdict-lines.ts'
import { wordsInLocale } from '../results/in-locale.ts'

const shown = new Set(['flow-50', 'duct-flow-25', 'duct-flow-25-per-floor-area'])

function named(name: string): string {
  const words = roleWords(name)
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** A text for each mean of both directions and each sum of systems that the test is part of, with its verdict. */
export function severalWords(several: readonly Several[], test: Test, language: string): string[] {
  return several
    .filter(({ tests }) => tests.some(({ id }) => id === test.id))
    .map((one) => {
      const { name, figures, verdict, withheld, checks } = one
      const limited = (verdict ?? withheld)?.limit.figure
      const numbers = Object.entries(figures)
        .filter(([id]) => shown.has(id) || id === limited)
        .map(([id, found]) => {
          const { value, margin, unit } = verdictLines(id, found, undefined, [])
          return [value, margin.startsWith('−') ? margin : margin && `± ${margin}`, unit].filter(Boolean).join(' ')
        })
      const found = limited === undefined ? undefined : figures[limited]
      const said = verdict && limited && found ? verdictLines(limited, found, verdict, []) : undefined
      const doubts = checks.filter(({ outcome }) => outcome !== 'good').map(({ text }) => text)
      const rest = [
        ...(said?.verdict ? [`${said.verdict.text}.`, said.likely, ...said.notes] : []),
        ...(withheld ? [withheld.withheld] : []),
        ...doubts,
      ]
      // A name is the owner's and stays as typed.
      return [say`${named(name)}: ${wordsInLocale(numbers, language).join(', ')}.`, ...wordsInLocale(rest, language)]
        .filter(Boolean)
        .join(' ')
    })
}
