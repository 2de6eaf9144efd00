/** Popup and sidebar run this one script, and wait for no other before they are drawn. */
import { afterFirstPaint } from './after-first-paint.ts'

// The build puts the loader of later parts into this script too, so that book and practice form read it as well: only
// where the page holds the calculator's head is the calculator meant.
if (document.querySelector('#root > .calc')) afterFirstPaint(() => import('./main.tsx'))
