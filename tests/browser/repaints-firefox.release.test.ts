/** Repainting in Firefox, through the toolbar's own button. */
import { launchFirefox } from './firefox.ts'
import { repaints } from './repaints.ts'

repaints(launchFirefox)
