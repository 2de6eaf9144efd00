import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** A sheet knows one direction; the job, which knows the other test, says it in this check's place. Source: ASTM E779 (from memory). */
export const bothDirections: Check = {
  id: 'both-directions',
  name: say`Both directions`,
  run: ({ sheet: { procedure } }) =>
    procedure === 'astm-e779'
      ? {
          outcome: 'not checked',
          text: say`ASTM E779 asks for both directions, or for the reason in the report. Test in the other one too, or say why not.`,
        }
      : undefined,
}
