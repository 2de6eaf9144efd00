/** What a binding can be bound to: the items of the jobs typed in last, the open one first. */
import { listDevices } from '../../book/devices.ts'
import { listJobs } from '../../book/jobs.ts'
import { getSettings } from '../../book/settings.ts'
import type { Item } from '../../form/material.ts'
import { material } from '../../job/material.ts'
import { labelWords, roleWords } from '../../words/names.ts'

export type KnownItems = ReadonlyMap<string, Item>

const most = 12

export async function knownItems(): Promise<KnownItems> {
  const [jobs, devices, settings] = await Promise.all([listJobs(), listDevices(), getSettings()])
  const current = jobs.find(({ id }) => id === settings.current.job)
  const items = new Map<string, Item>()
  for (const job of [...(current ? [current] : []), ...jobs.slice(0, most)]) {
    for (const [id, item] of Object.entries(material(job, devices).items)) {
      if (!items.has(id)) items.set(id, item)
    }
  }
  return items
}

/** An item in words, by its group and label when it is known. */
export function itemWords(id: string, items: KnownItems): string {
  const item = items.get(id)
  if (item) return `${roleWords(item.group)}: ${labelWords(item.label)}`
  const [group, field] = id.split('/')
  return field === undefined ? id : `${roleWords(group ?? '')}: ${labelWords(field.replaceAll('-', ' '))}`
}
