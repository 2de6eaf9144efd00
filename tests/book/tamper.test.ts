import { beforeAll, describe, expect, test } from 'vitest'
import { decrypted, encrypted, isBackup } from '../../lib/book/backup.ts'
import { attach } from '../../lib/book/attachments.ts'
import { database } from '../../lib/book/database.ts'
import { saveDevice } from '../../lib/book/devices.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { wholeBook } from '../../lib/book/json.ts'
import { saveMap } from '../../lib/book/maps.ts'
import { addNote } from '../../lib/book/notes.ts'
import { saveSettings } from '../../lib/book/settings.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { generator } from '../random.ts'
import { context, fakeDevice, fakeFill, fakeLine, fakeMap } from './fake.ts'
import './fresh.ts'
import { lineAt, lineNamed, refusal, turned } from './tamper.ts'

let bytes: Uint8Array<ArrayBuffer>
let lines: string[]

beforeAll(async () => {
  const job = { id: 'job-1', name: '14 Tannery Row' }
  await saveJob(demoJob())
  await saveDevice(fakeDevice())
  await saveMap(fakeMap())
  await saveSettings({ theme: 'dark' })
  for (const id of ['a', 'b', 'c']) {
    await startFill(fakeFill(id), context)
    await addFillLine(id, fakeLine('flow', { note: 'ünïcode ≤ 3 \u001f' }))
    await endFill(id)
  }
  await addNote({ kind: 'correction', job, of: 1, reason: 'Plans', text: '15790' }, '0.2.0')
  const photo = Uint8Array.from([0xff, 0xd8, 0xff, ...Array.from({ length: 300 }, (_, at) => at & 0xff)])
  await attach({ name: 'gauge.jpg', size: 303, arrayBuffer: async () => photo.buffer }, { job, text: '' }, '0.2.0')
  let text = ''
  for await (const part of wholeBook()) text += part
  bytes = new TextEncoder().encode(text)
  lines = text.split('\n')
})

const said = async (text: string[]) => (await refusal(new TextEncoder().encode(text.join('\n'))))?.message

test('a file that nobody touched is taken', async () => {
  expect(await refusal(bytes)).toBeUndefined()
})

test('every turned bit is seen, and its line is named', async () => {
  const random = generator(11)
  for (let sample = 0; sample < 60; sample++) {
    const bit = Math.floor(random() * bytes.length * 8)
    const error = await refusal(turned(bytes, bit))
    expect(error, `bit ${bit}`).toBeDefined()
    expect(lineNamed(error!), `bit ${bit}: ${error!.message}`).toBe(lineAt(bytes, bit >> 3))
  }
  expect(await (await database()).count('jobs')).toBe(0)
})

/** Where in the file an entry stands. */
const entry = (number: number) =>
  lines.findIndex((line) => line.includes('"entry"') && line.includes(`"number":${number},`))

describe('located:', () => {
  test('a deleted record', async () => {
    expect(await said(lines.toSpliced(entry(2), 1))).toMatch(
      /^Line \d+ of the file \(entry 3\) is out of place: record \d+ is missing before it\. Nothing was taken in\./,
    )
  })

  test('two records that changed places', async () => {
    const [a, b] = [entry(1), entry(2)]
    const changed = lines.with(a, lines[b]!).with(b, lines[a]!)
    expect(await said(changed)).toMatch(/\(entry 2\) is out of place/)
  })

  test('a file cut off', async () => {
    expect(await said(lines.slice(0, entry(3)))).toMatch(/and what comes after it are missing: the file was cut off/)
    expect(await said([...lines.slice(0, entry(3)), lines[entry(3)]!.slice(0, 90)])).toMatch(/it is not JSON/)
  })

  test('a record of another file', async () => {
    const other = lines[entry(1)]!
    expect(await said(lines.with(entry(2), other))).toMatch(/\(entry 1\) is out of place: it was moved here/)
  })
})

describe('an encrypted backup', () => {
  const passphrase = 'seven grey herons wade'
  let backup: Uint8Array<ArrayBuffer>

  beforeAll(async () => {
    let text = ''
    for await (const part of encrypted(new Blob([bytes]).stream().pipeThrough(new TextDecoderStream()), passphrase))
      text += part
    backup = new TextEncoder().encode(text)
  })

  test('opens with its passphrase to the same file, and says how it was made', async () => {
    const opened = await decrypted(new Blob([backup]), passphrase)
    expect(new Uint8Array(await opened.arrayBuffer())).toEqual(bytes)
    expect(await isBackup(new Blob([backup]))).toBe(true)
    const head: unknown = JSON.parse(new TextDecoder().decode(backup).split('\n')[0]!)
    expect(head).toMatchObject({ key: { name: 'PBKDF2', hash: 'SHA-256', iterations: 600_000 } })
    expect(new TextDecoder().decode(backup)).not.toContain('Tannery')
  })

  test('refuses another passphrase, and one too short', async () => {
    await expect(decrypted(new Blob([backup]), 'seven grey herons wade ')).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: The passphrase does not open this file, or the beginning of the file was changed. Type it again; mind capitals and spaces.]`,
    )
    await expect(encrypted(new Blob([]).stream().pipeThrough(new TextDecoderStream()), 'heron').next()).rejects.toThrow(
      'fewer than 12',
    )
  })

  test('opens by WebCrypto alone from what its first line says (RFC 8018, NIST SP 800-38D)', async () => {
    const [head = '', first = ''] = new TextDecoder().decode(backup).split('\n')
    const { createDecipheriv, pbkdf2Sync } = await import('node:crypto')
    const { key } = JSON.parse(head) as { key: { iterations: number; salt: string } }
    const raw = pbkdf2Sync(passphrase, Buffer.from(key.salt, 'base64'), key.iterations, 32, 'sha256')
    const cipher = createDecipheriv('aes-256-gcm', raw, Buffer.alloc(12))
    const data = Buffer.from(first, 'base64')
    cipher.setAAD(Buffer.from(`${head}\n0\ntrue`)).setAuthTag(data.subarray(-16))
    const plain = Buffer.concat([cipher.update(data.subarray(0, -16)), cipher.final()])
    expect(new Uint8Array(plain)).toEqual(bytes)
  })

  test('sees every turned bit', async () => {
    const random = generator(12)
    for (let sample = 0; sample < 12; sample++) {
      const bit = Math.floor(random() * backup.length * 8)
      await expect(decrypted(new Blob([turned(backup, bit)]), passphrase), `bit ${bit}`).rejects.toThrow(
        /^Line|^The first line|^The passphrase/,
      )
    }
  }, 60_000)

  test('that asks for too little or too much work is refused', async () => {
    const text = new TextDecoder().decode(backup)
    for (const asked of ['1000', '99999999999'])
      await expect(decrypted(new Blob([text.replace('600000', asked)]), passphrase)).rejects.toThrow('The first line')
  })
})
