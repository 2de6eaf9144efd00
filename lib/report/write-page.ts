/** What stands in a report, as an entry holds it; page-schema.ts reads it again. */
import type { Content } from './content.ts'

/** All of a report but what names the entry: that is known when the entry is sealed. */
export type Page = Omit<Content, 'fingerprint' | 'record'>

/** The version of what `pageOf` writes. */
export const pageVersion = 1

/** A number of a drawing, to a hundredth of its unit. */
const drawn = (value: unknown): unknown => (typeof value === 'number' ? Math.round(value * 100) / 100 : value)

/** The same as plain data, without what a report does not show. */
export function writePage(report: Content): Record<string, unknown> {
  const { fingerprint: _, record: __, ...content } = report
  const figures = content.figures.map(({ steps: ___, found: ____, budget: _____, ...line }) => line)
  const drawings = JSON.parse(
    JSON.stringify({ plot: content.plot, bars: content.bars }, (___, value) => drawn(value)),
  ) as object
  // By way of JSON nothing is left that a seal has no form for.
  return { ...(JSON.parse(JSON.stringify({ ...content, figures })) as Record<string, unknown>), ...drawings }
}
