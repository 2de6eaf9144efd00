import { useState } from 'preact/hooks'

let made = 0

/**
 * An id that no other part of this script has. The one of preact begins anew at each `render` of a root, as the widget
 * does at each keystroke, and would then be given twice.
 */
export const useId = (): string => useState(() => `g${++made}`)[0]
