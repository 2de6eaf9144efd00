/** Where one is in the book, as the hash of its address says it. */
export const sections = ['jobs', 'entries', 'maps', 'devices', 'limits', 'review', 'settings'] as const
export type SectionName = (typeof sections)[number]

export type Route = {
  section: SectionName
  /** Number of the entry that stands open. */
  entry?: number
  /** Id of the job whose entries are asked for. */
  job?: string
  /** Id of the form map that stands open. */
  map?: string
}

export function routeOf(hash: string): Route {
  const [place = '', query = ''] = hash.replace(/^#/, '').split('?')
  const entry = /^entry-([1-9]\d*)$/.exec(place)
  const section = entry ? 'entries' : (sections.find((name) => name === place) ?? 'entries')
  const asked = new URLSearchParams(query)
  const job = asked.get('job')
  const map = asked.get('map')
  return { section, ...(entry && { entry: Number(entry[1]) }), ...(job && { job }), ...(map && { map }) }
}

export function hashOf({ section, entry, job, map }: Route): string {
  const asked = new URLSearchParams({ ...(job && { job }), ...(map && { map }) }).toString()
  return `#${entry === undefined ? section : `entry-${entry}`}${asked && `?${asked}`}`
}
