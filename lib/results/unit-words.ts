import type { TypedUnits } from '../job/schema.ts'

/** How the units of cells are written beside them. */
export const flowWords = { cfm: 'cfm', 'm3/h': 'm³/h', 'L/s': 'L/s' } as const satisfies Record<
  TypedUnits['flow'],
  string
>

export const temperatureWords = { degF: '°F', degC: '°C' } as const satisfies Record<TypedUnits['temperature'], string>

export const areaWords = { ft: 'ft²', m: 'm²' } as const satisfies Record<TypedUnits['length'], string>

export const volumeWords = { ft: 'ft³', m: 'm³' } as const satisfies Record<TypedUnits['length'], string>

export const openingWords = { ft: 'in²', m: 'cm²' } as const satisfies Record<TypedUnits['length'], string>
