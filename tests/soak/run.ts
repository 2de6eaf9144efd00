/** `npm run soak`, or `npm run soak engine` for one part: what takes too long for every `npm test`. */
import { runParts } from '../bench/part.ts'

process.exitCode = (await runParts('soak', process.argv.slice(2))) ? 0 : 1
