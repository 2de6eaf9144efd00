import { asRead } from './as-read.ts'
import { term } from '../../words/term.ts'

export const ductFlow25AsRead = asRead(25, {
  id: 'duct-flow-25-as-read',
  label: term`Q25 as read`,
  labels: { cfm: term`CFM25 as read` },
  subject: 'ducts',
  group: 'test quality',
})
