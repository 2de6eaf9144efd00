import { expect, test } from 'vitest'
import { addressOf, matches, proposeAddress } from '../../../lib/form/map/address.ts'

test('an address holds no query and no fragment', () => {
  expect(addressOf('https://larch.example/rebate/part-c?token=secret#top')).toEqual({
    origin: 'https://larch.example',
    path: '/rebate/part-c',
  })
})

test.each([
  ['https://larch.example/rebate/LC7-2026-0187/part-c', '/rebate/*/part-c'],
  ['https://larch.example/jobs/48213/test', '/jobs/*/test'],
  ['https://larch.example/e/3f2504e0-4f89-41d3-9a0c-0305e82c3301', '/e/*'],
  ['https://larch.example/forms/lc-7/part-c', '/forms/lc-7/part-c'],
  ['https://larch.example/v2/air-leakage', '/v2/air-leakage'],
  ['https://larch.example/', '/'],
])('%s proposes %s', (url, path) => {
  expect(proposeAddress(url)).toEqual({ origin: 'https://larch.example', path })
  expect(matches(proposeAddress(url), url)).toBe(true)
})

test('a star stands for one segment, two at the end for any rest', () => {
  const origin = 'https://larch.example'
  expect(matches({ origin, path: '/jobs/*/test' }, 'https://larch.example/jobs/9/test/?x=1')).toBe(true)
  expect(matches({ origin, path: '/jobs/*/test' }, 'https://larch.example/jobs/9/8/test')).toBe(false)
  expect(matches({ origin, path: '/jobs/**' }, 'https://larch.example/jobs')).toBe(true)
  expect(matches({ origin, path: '/jobs/**' }, 'https://larch.example/jobs/9/8')).toBe(true)
  expect(matches({ origin, path: '/jobs/**' }, 'https://larch.example/job/9')).toBe(false)
  expect(matches({ origin, path: '/jobs/**' }, 'http://larch.example/jobs')).toBe(false)
  expect(matches({ origin, path: '/jobs/**' }, 'https://larch.example:8443/jobs')).toBe(false)
})
