/** Where one is in the book, as the hash of its address says it. */
export const sections = ['jobs', 'entries', 'maps', 'devices', 'limits', 'review', 'settings'] as const
export type SectionName = (typeof sections)[number]

export type Route = {
  /** A report stands in no bar: one comes to it from a job or an entry. */
  section: SectionName | 'report'
  /** Number of the entry that stands open. */
  entry?: number
  /** Id of the job whose entries are asked for. */
  job?: string
  /** Id of the form map that stands open. */
  map?: string
  /** Id of the test that a report is of. */
  test?: string
  /** Number of the entry whose readings a report is of. */
  of?: number
  /** Records whose day to be kept until has passed, or passes soon. */
  kept?: boolean
  /** Key of the book beside one's own in which the entry stands. */
  book?: string
}

export function routeOf(hash: string): Route {
  const [place = '', query = ''] = hash.replace(/^#/, '').split('?')
  const entry = /^entry-([1-9]\d*)$/.exec(place)
  const section = entry ? 'entries' : ([...sections, 'report' as const].find((name) => name === place) ?? 'entries')
  const asked = new URLSearchParams(query)
  const job = asked.get('job')
  const map = asked.get('map')
  const test = asked.get('test')
  const book = asked.get('book')
  const of = /^[1-9]\d{0,14}$/.exec(asked.get('entry') ?? '')
  return {
    section,
    ...(entry && { entry: Number(entry[1]) }),
    ...(job && { job }),
    ...(map && { map }),
    ...(test && { test }),
    ...(asked.get('kept') === 'soon' && { kept: true }),
    ...(book && /^[0-9a-f-]{1,64}$/.test(book) && { book }),
    ...(of && { of: Number(of[0]) }),
  }
}

export function hashOf({ section, entry, job, map, test, of, book, kept }: Route): string {
  const asked = new URLSearchParams({
    ...(job && { job }),
    ...(map && { map }),
    ...(test && { test }),
    ...(of && { entry: String(of) }),
    ...(book && { book }),
    ...(kept && { kept: 'soon' }),
  }).toString()
  return `#${entry === undefined ? section : `entry-${entry}`}${asked && `?${asked}`}`
}
