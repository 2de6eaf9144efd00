/** Labels as forms in Spanish, French and German have them; the wordings are common practice, no source. */
import { describe, expect, test } from 'vitest'
import { choose } from '../../../lib/form/choose.ts'
import type { Item, Material } from '../../../lib/form/material.ts'
import { propose } from '../../../lib/form/map/propose.ts'
import { suggest } from '../../../lib/form/map/suggest.ts'
import { french } from '../../../lib/form/map/vocabulary-french.ts'
import { german } from '../../../lib/form/map/vocabulary-german.ts'
import { spanish } from '../../../lib/form/map/vocabulary-spanish.ts'
import { vocabulary } from '../../../lib/form/map/vocabulary.ts'
import { words } from '../../../lib/form/words.ts'
import { fakeClues } from '../fake.ts'

const text = (label: string, group = ''): Item => ({ kind: 'text', label, group, text: 'x' })
const quantity = (label: string, unit: 'cfm' | '1/h' | 'ft3' | 'ft2' | 'cfm/ft2' | '1', group = ''): Item => ({
  kind: 'quantity',
  label,
  group,
  value: 10,
  unit,
  decimals: 0,
})
const material: Material = {
  job: { id: 'j', name: '14 Tannery Row' },
  items: {
    'building/street': text('street address'),
    'building/town': text('town'),
    'building/postcode': text('postcode'),
    'building/permit': text('permit number'),
    'building/volume': quantity('volume', 'ft3'),
    'building/floor-area': quantity('floor area', 'ft2'),
    'building/enclosure-area': quantity('enclosure area', 'ft2'),
    'tester/name': text('name'),
    'tester/company': text('company'),
    'tester/licence': text('licence number'),
    'tester/phone': text('phone'),
    'before/flow-50': quantity('CFM50', 'cfm', 'before'),
    'after/flow-50': quantity('CFM50', 'cfm', 'after'),
    'after/air-changes-50': quantity('ACH50', '1/h', 'after'),
    'after/leakage-exponent': quantity('exponent', '1', 'after'),
    'after/notes': text('notes', 'after'),
  },
}
const clearOf = (name: string, section: string) =>
  propose(suggest(fakeClues({ name, section, attributes: {} }), material)).find((one) => one.clear)?.item

describe.each([
  [
    'Spanish',
    [
      ['Calle y número', 'Edificio', 'building/street'],
      ['Ciudad', 'Edificio', 'building/town'],
      ['Número de permiso', 'Edificio', 'building/permit'],
      ['Volumen acondicionado, ft³', 'Edificio', 'building/volume'],
      ['Área de piso, ft²', 'Edificio', 'building/floor-area'],
      ['Superficie habitable (ft²)', 'Vivienda', 'building/floor-area'],
      ['Nombre del técnico', 'Técnico', 'tester/name'],
      ['Empresa', 'Técnico', 'tester/company'],
      ['N.º de licencia', 'Técnico', 'tester/licence'],
      ['Fuga de aire a 50 Pa (CFM)', 'Antes del trabajo', 'before/flow-50'],
      ['Caudal a 50 Pa', 'Prueba después del trabajo', 'after/flow-50'],
      ['Renovaciones de aire por hora a 50 Pa', 'Prueba después del trabajo', 'after/air-changes-50'],
      ['Observaciones', 'Prueba después del trabajo', 'after/notes'],
    ],
  ],
  [
    'French',
    [
      ['Numéro et rue', 'Bâtiment', 'building/street'],
      ['Commune', 'Bâtiment', 'building/town'],
      ['Code postal', 'Bâtiment', 'building/postcode'],
      ['N° de permis', 'Bâtiment', 'building/permit'],
      ['Volume chauffé (m³)', 'Bâtiment', 'building/volume'],
      ['Surface habitable (m²)', 'Logement', 'building/floor-area'],
      ['Surface de l’enveloppe, m²', 'Bâtiment', 'building/enclosure-area'],
      ['Nom de l’opérateur', 'Opérateur', 'tester/name'],
      ['Entreprise', 'Opérateur', 'tester/company'],
      ['N° de certification', 'Opérateur', 'tester/licence'],
      ['Téléphone', 'Opérateur', 'tester/phone'],
      ['Débit de fuite à 50 Pa', 'Essai avant travaux', 'before/flow-50'],
      ['Débit de fuite à 50 Pa', 'Essai après travaux', 'after/flow-50'],
      ['Taux de renouvellement d’air à 50 Pa', 'Essai après travaux', 'after/air-changes-50'],
      ['Exposant n', 'Essai après travaux', 'after/leakage-exponent'],
      ['Remarques', 'Essai après travaux', 'after/notes'],
    ],
  ],
  [
    'German',
    [
      ['Straße und Hausnummer', 'Gebäude', 'building/street'],
      ['Ort', 'Gebäude', 'building/town'],
      ['PLZ', 'Gebäude', 'building/postcode'],
      ['Nummer der Baugenehmigung', 'Gebäude', 'building/permit'],
      ['Genehmigungs-Nr.', 'Gebäude', 'building/permit'],
      ['Innenvolumen (m³)', 'Gebäude', 'building/volume'],
      ['Nettogrundfläche, m²', 'Gebäude', 'building/floor-area'],
      ['Hüllfläche (m²)', 'Gebäude', 'building/enclosure-area'],
      ['Name des Prüfers', 'Prüfer', 'tester/name'],
      ['Firmenname', 'Prüfer', 'tester/company'],
      ['Zertifikatsnummer', 'Prüfer', 'tester/licence'],
      ['Telefon', 'Prüfer', 'tester/phone'],
      ['Leckagevolumenstrom bei 50 Pa', 'Messung vor den Arbeiten', 'before/flow-50'],
      ['Leckagevolumenstrom bei 50 Pa', 'Messung nach den Arbeiten', 'after/flow-50'],
      ['Luftwechselrate bei 50 Pa', 'Messung nach den Arbeiten', 'after/air-changes-50'],
      ['Strömungsexponent', 'Messung nach den Arbeiten', 'after/leakage-exponent'],
      ['Bemerkungen', 'Messung nach den Arbeiten', 'after/notes'],
    ],
  ],
] satisfies [string, [string, string, string][]][])('in %s', (_, labels) => {
  test.each(labels)('%s under %s asks for %s', (name, section, item) => {
    expect(clearOf(name, section)).toBe(item)
  })
})

test.each([
  'Altura de caída',
  'Nombre del propietario',
  'Dirección de correo del cliente',
  'Firma',
  'Nom du propriétaire',
  'Signature',
  'Name des Eigentümers',
  'Unterschrift',
  'Hauteur de chute',
])('%s asks for nothing of these', (name) => {
  expect(clearOf(name, 'Client')).toBeUndefined()
})

// `vor Ort` is on site, `nach außen` outwards, `nach ISO 9972` and `d’après` by a standard or a plan.
test.each([
  ['Leckagevolumenstrom bei 50 Pa', 'Messung vor Ort'],
  ['Leckagevolumenstrom bei 50 Pa', 'Messung nach ISO 9972'],
  ['Débit de fuite à 50 Pa', 'Valeurs d’après mesure'],
])('%s under %s says no time of the test', (name, section) => {
  expect(clearOf(name, section)).toBeUndefined()
})

// English labels with words that mean something else in another language.
test.each([
  'Dryer vent',
  'Vent location',
  'Debit card number',
  'Permit expiration date',
  'Not applicable',
  'Portable heater',
  'Order number',
])('%s is no label of another language', (label) => {
  const said = words(label).join(' ')
  for (const wordings of [spanish, french, german])
    for (const [field, wording] of Object.entries(wordings))
      expect({ field, fits: wording.test(said) }).toEqual({ field, fits: false })
})

test('each wording is of something that English forms ask for too', () => {
  for (const wordings of [spanish, french, german])
    expect(Object.keys(wordings).filter((field) => !Object.hasOwn(vocabulary, field))).toEqual([])
})

test.each([
  ['pass', ['Conforme', 'Non conforme'], 'Conforme'],
  ['fail', ['Bestanden', 'Nicht bestanden'], 'Nicht bestanden'],
  ['depressurize', ['Unterdruck', 'Überdruck'], 'Unterdruck'],
  ['pressurize', ['Dépression', 'Surpression'], 'Surpression'],
  ['yes', ['Sí', 'No'], 'Sí'],
  ['no', ['Oui', 'Non'], 'Non'],
])('%s of %s is %s', (answer, options, chosen) => {
  expect(choose(answer, [], options)).toBe(chosen)
})
