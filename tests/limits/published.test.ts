import { expect, test } from 'vitest'
import * as z from 'zod/mini'
import { limitSchema, publishedLimits } from '../../lib/limits/index.ts'

test('every published limit fits the schema, and no id is used twice', () => {
  expect(z.array(limitSchema).parse(publishedLimits)).toEqual(publishedLimits)
  const ids = publishedLimits.map((limit) => limit.id)
  expect(new Set(ids).size).toBe(ids.length)
})

test.each(publishedLimits)('$id says when it was checked, how sure we are, and to look it up', (limit) => {
  expect(limit.caution).toContain('Check the edition your authority enforces')
  expect(limit.checked).toMatch(/^\d{4}-\d{2}$/)
  expect(limit.edition).not.toBe('')
  expect(['read', 'secondary', 'from memory']).toContain(limit.confidence)
})

test('no number is shipped for the ducts of the 2024 edition: it is unverified', () => {
  expect(publishedLimits.filter((limit) => limit.edition.includes('2024') && limit.subject === 'ducts')).toEqual([])
})

/**
 * IECC 2009 402.4.2.1 and 403.2.2; 2012, 2015 and 2018 R402.4.1.2, R403.2.2 (2012), R403.3.4 (2015, 2018); 2021
 * R402.4.1.2, R402.4.1.3, R403.3.6; 2024 R402.5.1.3; commercial C402.5 to 2018. "From memory" rows say so themselves.
 */
test('the list as it stands, to be held beside the codes', () => {
  const rows = publishedLimits.map(({ id, comparison, value, unit, clause, confidence }) =>
    [id, `${comparison} ${value} ${unit}`, clause, confidence].join(' | '),
  )
  expect(rows.join('\n')).toMatchInlineSnapshot(`
    "iecc-2024-air-changes-zones-0-2 | <= 4 1/h | R402.5.1.3 | from memory
    iecc-2024-air-changes-zone-3 | <= 3 1/h | R402.5.1.3 | from memory
    iecc-2024-air-changes-zones-4-5 | <= 3 1/h | R402.5.1.3 | read
    iecc-2024-air-changes-zone-6 | <= 2.5 1/h | R402.5.1.3 | read
    iecc-2024-air-changes-zones-7-8 | <= 2.5 1/h | R402.5.1.3 | from memory
    iecc-2021-air-changes-prescriptive-zones-0-2 | <= 5 1/h | R402.4.1.3 | read
    iecc-2021-air-changes-prescriptive-zones-3-8 | <= 3 1/h | R402.4.1.3 | read
    iecc-2021-air-changes | <= 5 1/h | R402.4.1.2 | read
    iecc-2021-per-enclosure-area | <= 0.28 cfm/ft2 | R402.4.1.2 | read
    iecc-2021-per-enclosure-area-attached-or-small | <= 0.3 cfm/ft2 | R402.4.1.2, exception | from memory
    iecc-2018-air-changes-zones-1-2 | <= 5 1/h | R402.4.1.2 | read
    iecc-2018-air-changes-zones-3-8 | <= 3 1/h | R402.4.1.2 | read
    iecc-2015-air-changes-zones-1-2 | <= 5 1/h | R402.4.1.2 | read
    iecc-2015-air-changes-zones-3-8 | <= 3 1/h | R402.4.1.2 | read
    iecc-2012-air-changes-zones-1-2 | <= 5 1/h | R402.4.1.2 | read
    iecc-2012-air-changes-zones-3-8 | <= 3 1/h | R402.4.1.2 | read
    iecc-2009-air-changes | < 7 1/h | 402.4.2.1 | read
    iecc-2021-ducts-total | <= 4 cfm/100ft2 | R403.3.6 | read
    iecc-2021-ducts-rough-in | <= 4 cfm/100ft2 | R403.3.6 | read
    iecc-2021-ducts-rough-in-without-air-handler | <= 3 cfm/100ft2 | R403.3.6 | read
    iecc-2018-ducts-total | <= 4 cfm/100ft2 | R403.3.4 | read
    iecc-2018-ducts-rough-in | <= 4 cfm/100ft2 | R403.3.4 | read
    iecc-2018-ducts-rough-in-without-air-handler | <= 3 cfm/100ft2 | R403.3.4 | read
    iecc-2015-ducts-total | <= 4 cfm/100ft2 | R403.3.4 | read
    iecc-2015-ducts-rough-in | <= 4 cfm/100ft2 | R403.3.4 | read
    iecc-2015-ducts-rough-in-without-air-handler | <= 3 cfm/100ft2 | R403.3.4 | read
    iecc-2012-ducts-total | <= 4 cfm/100ft2 | R403.2.2 | from memory
    iecc-2012-ducts-rough-in | <= 4 cfm/100ft2 | R403.2.2 | from memory
    iecc-2012-ducts-rough-in-without-air-handler | <= 3 cfm/100ft2 | R403.2.2 | from memory
    iecc-2021-ducts-inside | <= 8 cfm/100ft2 | R403.3.6 | read
    iecc-2009-ducts-total | <= 12 cfm/100ft2 | 403.2.2 | read
    iecc-2009-ducts-outside | <= 8 cfm/100ft2 | 403.2.2 | from memory
    iecc-2009-ducts-rough-in | <= 6 cfm/100ft2 | 403.2.2 | read
    iecc-2009-ducts-rough-in-without-air-handler | <= 4 cfm/100ft2 | 403.2.2 | read
    iecc-2024-commercial-per-enclosure-area | <= 0.35 cfm/ft2 |  | secondary
    iecc-2021-commercial-per-enclosure-area | <= 0.4 cfm/ft2 | C402.5.3 | read
    iecc-commercial-per-enclosure-area | <= 0.4 cfm/ft2 | C402.5 | read
    army-corps-per-enclosure-area | <= 0.25 cfm/ft2 |  | read
    passive-house-air-changes | <= 0.6 1/h |  | from memory
    germany-air-changes | <= 3 1/h | § 26 | secondary
    germany-air-changes-ventilated | <= 1.5 1/h | § 26 | secondary
    germany-per-enclosure-area | <= 4.5 m3/(h.m2) | § 26 | secondary
    germany-per-enclosure-area-ventilated | <= 2.5 m3/(h.m2) | § 26 | secondary
    france-house | <= 0.6 m3/(h.m2) |  | read
    france-flats | <= 1 m3/(h.m2) |  | read
    england-2021-per-enclosure-area | <= 8 m3/(h.m2) |  | secondary"
  `)
})
