/** `import 'gapsum/vue'` once, and templates know the element. Types only. */
import type { DefineComponent } from 'vue'
import type { Device, Entered, Options, Outcome } from './types.ts'

declare module 'vue' {
  interface GlobalComponents {
    'gapsum-widget': DefineComponent<
      Partial<Options> & {
        name?: string
        required?: boolean
        disabled?: boolean
        devices?: readonly Device[]
        'onGapsum-report'?: (event: CustomEvent<Outcome>) => void
        'onGapsum-entered'?: (event: CustomEvent<Entered[]>) => void
      }
    >
  }
}
