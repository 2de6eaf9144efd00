import { say } from '../../words/say.ts'

/** Said of a page that has more controls than were looked at. */
export const tooMany = (most: number): string =>
  say`This page has more than ${most} controls. Only the first ${most} were looked at.`
