import { asRead } from './as-read.ts'
import { term } from '../../words/term.ts'

export const flow50AsRead = asRead(50, {
  id: 'flow-50-as-read',
  label: term`Q50 as read`,
  labels: { cfm: term`CFM50 as read` },
  group: 'test quality',
})
