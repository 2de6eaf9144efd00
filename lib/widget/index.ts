/** Importing this defines <gapsum-widget>. */
import { defineWidget, GapsumWidget } from './element.ts'
import type { WidgetEvents } from './types.ts'

export { defineWidget, GapsumWidget }
export type * from './types.ts'

declare global {
  interface HTMLElementTagNameMap {
    'gapsum-widget': GapsumWidget
  }
  interface HTMLElementEventMap extends WidgetEvents {}
}

defineWidget()
