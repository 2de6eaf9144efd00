import { asRead } from './as-read.ts'

export const flow50AsRead = asRead(50, { id: 'flow-50-as-read', group: 'test quality' })
