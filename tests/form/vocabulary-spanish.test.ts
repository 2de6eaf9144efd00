/** Labels as forms in Spanish have them; the wordings are common practice, no source. */
import { expect, test } from 'vitest'
import type { Item, Material } from '../../lib/form/material.ts'
import { propose } from '../../lib/form/propose.ts'
import { suggest } from '../../lib/form/suggest.ts'
import { fakeClues } from './fake.ts'

const text = (label: string, group = ''): Item => ({ kind: 'text', label, group, text: 'x' })
const flow = (label: string, unit: 'cfm' | '1/h' | 'ft3' | 'ft2', group = ''): Item => ({
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
    'building/permit': text('permit number'),
    'building/volume': flow('volume', 'ft3'),
    'building/floor-area': flow('floor area', 'ft2'),
    'tester/name': text('name'),
    'tester/company': text('company'),
    'tester/licence': text('licence number'),
    'before/flow-50': flow('CFM50', 'cfm', 'before'),
    'after/flow-50': flow('CFM50', 'cfm', 'after'),
    'after/air-changes-50': flow('ACH50', '1/h', 'after'),
    'after/notes': text('notes', 'after'),
  },
}

test.each([
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
])('%s under %s asks for %s', (name, section, item) => {
  const clear = propose(suggest(fakeClues({ name, section, attributes: {} }), material)).find((one) => one.clear)
  expect(clear?.item).toBe(item)
})

test.each(['Altura de caída', 'Nombre del propietario', 'Dirección de correo del cliente', 'Firma'])(
  '%s asks for nothing of these',
  (name) => {
    const found = suggest(fakeClues({ name, section: 'Cliente', attributes: {} }), material)
    expect(propose(found).filter((one) => one.clear)).toEqual([])
  },
)
