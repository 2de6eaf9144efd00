/** `import 'gapsum/react'` once, and JSX knows the element. Types only. */
import type * as React from 'react'
import type { GapsumWidget } from './element.ts'
import type { Device, Options, Outcome, Entered } from './types.ts'

declare module 'react' {
  namespace JSX {
    interface IntrinsicElements {
      'gapsum-widget': React.DetailedHTMLProps<React.HTMLAttributes<GapsumWidget>, GapsumWidget> &
        Partial<Options> & {
          name?: string
          required?: boolean
          disabled?: boolean
          devices?: readonly Device[]
          'ongapsum-report'?: (event: CustomEvent<Outcome>) => void
          'ongapsum-entered'?: (event: CustomEvent<Entered[]>) => void
        }
    }
  }
}
