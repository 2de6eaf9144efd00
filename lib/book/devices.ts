import { deviceSchema, type Device } from '../job/schema.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { copy } from './journal/copies.ts'
import { announce } from './notice.ts'
import { allSound, sound } from './sound.ts'
import { buried, bury, unbury } from './tombstones.ts'
import { say } from '../words/say.ts'

/** Devices that are not deleted, by name. */
export async function listDevices(): Promise<Device[]> {
  const [devices, gone] = await Promise.all([(await database()).getAll('devices'), buried('device')])
  return allSound(deviceSchema, devices)
    .filter(({ id }) => !gone.has(id))
    .toSorted((a, b) => a.name.localeCompare(b.name))
}

/** A device by its id, deleted or not: an old job still refers to it. */
export async function getDevice(id: string): Promise<Device | undefined> {
  return sound(deviceSchema, await (await database()).get('devices', id))
}

/** @throws BookError when the device does not fit its schema. */
export async function saveDevice(device: Device): Promise<Device> {
  const kept = check(deviceSchema, device, say`The device`)
  const tx = (await database()).transaction('devices', 'readwrite')
  const put = tx.store.put(kept)
  tx.commit()
  await Promise.all([put, tx.done, copy('devices', kept.id, kept)])
  announce({ what: 'devices', id: kept.id })
  return kept
}

export async function deleteDevice(id: string): Promise<void> {
  await bury('device', id)
  announce({ what: 'devices', id })
}

export async function restoreDevice(id: string): Promise<void> {
  await unbury('device', id)
  announce({ what: 'devices', id })
}
