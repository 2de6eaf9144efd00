import { mostControls } from '../../bounds.ts'
import { say } from '../../words/say.ts'

export const tooMany = say`This page has more than ${mostControls} controls. Only the first ${mostControls} were looked at.`
