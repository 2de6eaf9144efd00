import type { Browser } from 'webextension-polyfill'

/** In manifest 3 every browser gives promises, so no polyfill weighs on the popup: only the name differs. */
const { browser: named, chrome } = globalThis as { browser?: Browser; chrome?: Browser }

export const browser = (named ?? chrome) as Browser
