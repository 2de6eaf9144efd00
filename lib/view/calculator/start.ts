/** Popup and sidebar run this one script, and wait for no other before they are drawn. */
import { afterFirstPaint } from './after-first-paint.ts'

afterFirstPaint(() => import('./main.tsx'))
