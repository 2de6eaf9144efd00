import { asRead } from './as-read.ts'

export const ductFlow25AsRead = asRead(25, { id: 'duct-flow-25-as-read', subject: 'ducts', group: 'test quality' })
