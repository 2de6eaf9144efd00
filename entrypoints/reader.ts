import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { serve, type Line } from '../lib/book/reader.ts'

/** The worker that reads long files of the book. */
export default defineUnlistedScript({ main: () => serve(globalThis as unknown as Line) })
