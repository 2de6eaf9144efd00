/** Clicks, keys and Tabs of a day's work, counted while it is done in the built extension. */
import { bindSum, bothDirections, type Count, firstVerdict, houses, twoSystems } from '../browser/counted-day.ts'
import { launch, type Session } from '../browser/harness.ts'
import { startSite } from '../pages/site/server.ts'
import type { Row } from './part.ts'

const rows = (what: string, { clicks, keys, tabs }: Count, most?: number): Row[] => [
  {
    what: `${what}: clicks`,
    value: clicks,
    unit: '',
    ...(most !== undefined && { aim: `at most ${most}`, met: clicks <= most }),
  },
  { what: `${what}: keys and Tabs`, value: keys + tabs, unit: '' },
]

async function inNew<T>(work: (session: Session) => Promise<T>): Promise<T> {
  const session = await launch()
  try {
    return await work(session)
  } finally {
    await session.close()
  }
}

export default async function clicksOfADay(): Promise<Row[]> {
  const site = await startSite()
  try {
    const first = await inNew(async (session) => firstVerdict(await session.openPage('/popup.html')))
    const day = await inNew((session) => houses(session, site.plain, ['470', '410', '425']))
    const ducts = await inNew((session) => twoSystems(session, site.plain, bindSum))
    const both = await inNew(async (session) => bothDirections(session, await session.openPage('/popup.html')))
    return [
      ...rows('install to a job', first.before),
      ...rows('readings of a house', first.readings, 0),
      ...rows('from readings to a verdict', first.after, 2),
      ...day
        .map(({ begin, setUp, fill }, at) => [
          rows(`house ${at + 2}, begun`, begin),
          rows(`house ${at + 2}, set-up`, setUp, 0),
          rows(`house ${at + 2}, its form`, fill, 3),
        ])
        .flat(2),
      ...rows('first duct system at rough-in', ducts.first),
      ...rows('second duct system', ducts.second, 1),
      ...rows('verdict on the sum in a form', ducts.fill, 3),
      ...rows('first direction after ISO 9972', both.first),
      ...rows('other direction', both.second, 1),
      ...rows('mean in the report', both.report, 1),
    ]
  } finally {
    await site.close()
  }
}
