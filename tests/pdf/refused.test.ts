/** What cannot or must not be filled is refused with a sentence that says what it is and what to do. */
import { deflateSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import { bounds } from '../../lib/pdf/bounds.ts'
import { plainForm } from './forms.ts'
import { open, refusal } from './opened.ts'
import { remade } from './outside.ts'
import { raw, rawForm, stream, textField } from './raw.ts'

const plain = await plainForm()

describe('a file that is no whole PDF', () => {
  test.each([
    ['nothing', new Uint8Array(), /is empty/],
    ['a letter', new TextEncoder().encode('Dear office, here is the form.'), /is not a PDF/],
    ['a page of HTML', new TextEncoder().encode('<!doctype html><title>Sign in</title>'), /is not a PDF/],
    ['a form cut in the middle', plain.bytes.slice(0, plain.bytes.length / 2), /cut off/],
    ['a form that lost its last thousand bytes', plain.bytes.slice(0, -1000), /cut off/],
  ])('%s', async (_, bytes, words) => {
    expect(await refusal(bytes)).toMatch(words)
  })

  test('a file larger than any form', async () => {
    expect(await refusal(new Uint8Array(bounds.file + 1))).toMatch(/has 51 MB, and at most 50 MB/)
  })

  test('a head and an end with nothing readable between', async () => {
    expect(await refusal(new TextEncoder().encode('%PDF-1.7\nnothing\nstartxref\n9\n%%EOF'))).toMatch(/damaged/)
  })
})

describe('a file that is locked', () => {
  test('by a password asks for it, says when it is wrong, and opens with the right one', async () => {
    const locked = remade(plain.bytes, '--encrypt', 'tannery', 'owner', '256', '--')
    expect(await refusal(locked)).toMatch(/asks for a password/)
    expect(await refusal(locked, 'tanner')).toMatch(/password does not open/)
    expect((await open(locked, 'tannery')).fields).toHaveLength(15)
  })

  test('against filling is refused; against printing alone it is opened', async () => {
    const no = remade(
      plain.bytes,
      '--encrypt',
      '',
      'owner',
      '256',
      '--form=n',
      '--annotate=n',
      '--modify-other=n',
      '--',
    )
    expect(await refusal(no)).toMatch(/does not allow it to be filled/)
    const yes = remade(plain.bytes, '--encrypt', '', 'owner', '256', '--print=none', '--')
    expect(await refusal(yes)).toBe('')
  })
})

describe('a file that filling would break', () => {
  const signature =
    '<< /Type /Annot /Subtype /Widget /FT /Sig /T (sign) /Rect [54 100 300 140] /F 4 /P 3 0 R /V << /Type /Sig /Filter /Adobe.PPKLite /SubFilter /adbe.pkcs7.detached /ByteRange [0 10 20 30] /Contents <00> >> >>'

  test('is refused when it is signed', async () => {
    expect(await refusal(rawForm([textField('permit'), signature], { form: '/SigFlags 3 ' }))).toMatch(/is signed/)
  })

  test('is opened when it only has a place to sign, which is no field here', async () => {
    const empty = signature.replace(/\/V << .* >> >>$/, '>>')
    const { fields } = await open(rawForm([textField('permit'), empty], { form: '/SigFlags 1 ' }))
    expect(fields.map(({ name }) => name)).toEqual(['permit'])
  })

  test('is refused when it carries usage rights', async () => {
    const rights = rawForm([textField('permit')], {
      catalog: '/Perms << /UR3 7 0 R >> ',
      objects: ['<< /Type /Sig >>'],
    })
    expect(await refusal(rights)).toMatch(/usage rights/)
  })

  test('is refused when only the program it was made with can show it', async () => {
    const packet = stream('<xdp:xdp xmlns:xdp="http://ns.adobe.com/xdp/"></xdp:xdp>')
    const pure = rawForm([], { form: '/XFA 6 0 R ', objects: [packet] })
    expect(await refusal(pure)).toMatch(/XFA/)
  })
})

describe('a file that means harm', () => {
  test('whose stream unpacks to gigabytes is refused before the library sees it, without taking the memory', async () => {
    const zeros = deflateSync(new Uint8Array(bounds.stream + 1_000_000))
    expect(zeros.length).toBeLessThan(300_000)
    const bomb = rawForm([textField('permit')], { objects: [stream(zeros, '/Filter /FlateDecode ')] })
    expect(await refusal(bomb)).toMatch(/fill the computer’s memory/)
    const twice = rawForm([textField('permit')], {
      objects: [stream(deflateSync(zeros), '/Filter [/FlateDecode /FlateDecode] ')],
    })
    expect(await refusal(twice)).toMatch(/fill the computer’s memory/)
    const often = rawForm([textField('permit')], {
      objects: [stream('x', '/Filter [/FlateDecode /FlateDecode /FlateDecode] ')],
    })
    expect(await refusal(often)).toMatch(/fill the computer’s memory/)
  })

  test('whose pages are pages of themselves ends with words', async () => {
    const loop = raw(['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [2 0 R] /Count 3 >>'])
    expect(await refusal(loop)).toMatch(/damaged|too long/)
  })

  test('that says it has a million pages', async () => {
    const many = raw(['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [] /Count 1000000 >>'])
    expect(await refusal(many)).toMatch(/pages|damaged/)
  })

  test('with more fields than any form has', async () => {
    const many = Array.from({ length: bounds.fields + 1 }, (_, at) => textField(`f${at}`))
    expect(await refusal(rawForm(many))).toMatch(/more than 5000 fields/)
  })

  test('with names and values as hostile as can be is opened, and they stay texts', async () => {
    const nasty = String.raw`<img src=x onerror=alert\(1\)>`
    const { fields, called } = await open(rawForm([textField(nasty, 700, `/V (${nasty}) /TU (${nasty}) `)]))
    expect(fields.map(({ name, value }) => [name, value])).toEqual([
      ['<img src=x onerror=alert(1)>', '<img src=x onerror=alert(1)>'],
    ])
    expect(called.size).toBe(1)
  })
})
