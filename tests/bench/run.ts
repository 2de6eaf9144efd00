/** `npm run bench`, or `npm run bench engine` for one part. Times are measured against each other in one run. */
import { runParts } from './part.ts'

process.exitCode = (await runParts('bench', process.argv.slice(2))) ? 0 : 1
