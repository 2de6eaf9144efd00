/** Every page that means harm in Firefox, those too that take too long for a test run. */
import { spawn } from 'node:child_process'
import type { Row } from '../bench/part.ts'

export default async function firefox(): Promise<Row[]> {
  const child = spawn('vitest', ['run', '--project', 'release', 'tests/browser/hostile-firefox.release.test.ts'], {
    stdio: 'inherit',
    env: { ...process.env, HOSTILE: 'all' },
  })
  const code = await new Promise<number>((resolve) => {
    child.on('error', () => resolve(1))
    child.on('exit', (ended) => resolve(ended ?? 1))
  })
  return [{ what: 'pages that mean harm, in Firefox', value: code, unit: 'failed run', aim: 'none', met: code === 0 }]
}
