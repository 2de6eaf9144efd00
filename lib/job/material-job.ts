/** The fields of a building and of its tester that a form can be filled with. */
import type { Item } from '../form/material.ts'
import { marksIn } from '../units/comma.ts'
import type { Marks } from '../units/marks.ts'
import { cellValue, typedDecimals, unitAt } from './cells.ts'
import { choices } from './options.ts'
import type { Building, Job, Tester } from './schema.ts'
import { term } from '../words/term.ts'

type Items = Record<string, Item>

/** Text without the space around it; nothing when it is empty. */
export function textItem(label: string, group: string, text: string): Item | undefined {
  return text.trim() === '' ? undefined : { kind: 'text', label, group, text: text.trim() }
}

/** A day typed as YYYY-MM-DD; nothing when there is no such day. */
export function dateItem(label: string, group: string, iso: string): Item | undefined {
  const text = iso.trim()
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return undefined
  const day = new Date(`${text}T00:00:00Z`)
  const real = !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)
  return real ? { kind: 'date', label, group, iso: text } : undefined
}

export function choiceItem(
  label: string,
  group: string,
  value: string,
  options: readonly { value: string; label: string }[],
): Item | undefined {
  return value === '' ? undefined : { kind: 'choice', label, group, value, options: [...options] }
}

/** The number of a typed cell, with the decimals it was typed with; nothing when it is empty or bad. */
export function quantityItem(
  label: string,
  group: string,
  path: string,
  text: string,
  unit: string,
  marks?: Marks,
): Item | undefined {
  const { value } = cellValue(text, path, unit, { marks })
  if (value === undefined) return undefined
  return { kind: 'quantity', label, group, value, unit, decimals: typedDecimals(text, value) ?? 2 }
}

export function known(entries: Record<string, Item | undefined>): Items {
  const items: Items = {}
  for (const [id, item] of Object.entries(entries)) if (item !== undefined) items[id] = item
  return items
}

/** The address in one line: `14 Tannery Row, Unit 2, Marrowby, Larch County`. */
function addressLine({ street, unit, town, state, postcode }: Building): string {
  const region = [state, postcode].map((part) => part.trim()).filter((part) => part !== '')
  return [street, unit, town, region.join(' ')]
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .join(', ')
}

export function jobItems({ building, units }: Job): Items {
  const group = term`building`
  const text = (label: string, field: keyof Building) => textItem(label, group, building[field] ?? '')
  const number = (label: string, field: keyof Building) => {
    const path = `building.${field}`
    return quantityItem(label, group, path, building[field] ?? '', unitAt(path, units), marksIn(units))
  }
  return known({
    'job/address': textItem(term`address in one line`, group, addressLine(building)),
    'job/street': text(term`street address`, 'street'),
    'job/unit': text(term`unit`, 'unit'),
    'job/town': text(term`town`, 'town'),
    'job/state': text(term`state`, 'state'),
    'job/postcode': text(term`postal code`, 'postcode'),
    'job/permit': text(term`permit number`, 'permit'),
    'job/program': text(term`program number`, 'program'),
    'job/builder': text(term`builder or contractor`, 'builder'),
    'job/floor-area': number(term`floor area`, 'floorArea'),
    'job/volume': number(term`volume`, 'volume'),
    'job/volume-basis': choiceItem(term`what the volume is`, group, building.volumeBasis ?? '', choices.volumeBasis),
    'job/enclosure-area': number(term`enclosure area`, 'enclosureArea'),
    'job/enclosure-area-without-floor': number(
      term`enclosure area without the lowest floor`,
      'enclosureAreaWithoutFloor',
    ),
    'job/height': number(term`height`, 'height'),
    'job/bedrooms': number(term`bedrooms`, 'bedrooms'),
    'job/stories': number(term`stories`, 'stories'),
    'job/climate-zone': text(term`climate zone`, 'climateZone'),
    'job/area-source': choiceItem(term`how areas were obtained`, group, building.areaSource, choices.areaSource),
    'job/elevation': number(term`elevation`, 'elevation'),
    'job/weather-shielding-factor': number(term`weather and shielding factor`, 'weatherShieldingFactor'),
  })
}

export function testerItems(tester: Tester): Items {
  const group = term`tester`
  const text = (label: string, field: keyof Tester) => textItem(label, group, tester[field])
  return known({
    'tester/name': text(term`tester`, 'name'),
    'tester/company': text(term`company`, 'company'),
    'tester/licence': text(term`licence`, 'licence'),
    'tester/licence-expiry': dateItem(term`licence expiry`, group, tester.licenceExpiry),
    'tester/phone': text(term`phone`, 'phone'),
    'tester/email': text(term`e-mail`, 'email'),
  })
}
