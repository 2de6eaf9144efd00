import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

export type Kind = 'chromium' | 'firefox'

interface Search {
  variable: string
  commands: string[]
  places: string[]
  debian: string
}

const searches: Record<Kind, Search> = {
  chromium: {
    variable: 'CHROMIUM',
    commands: ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'],
    places: [
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      String.raw`C:\Program Files\Chromium\Application\chrome.exe`,
      String.raw`C:\Program Files\Google\Chrome\Application\chrome.exe`,
      String.raw`C:\Program Files (x86)\Google\Chrome\Application\chrome.exe`,
    ],
    debian: 'chromium',
  },
  firefox: {
    variable: 'FIREFOX',
    commands: ['firefox-esr', 'firefox'],
    places: [
      '/Applications/Firefox.app/Contents/MacOS/firefox',
      String.raw`C:\Program Files\Mozilla Firefox\firefox.exe`,
    ],
    debian: 'firefox-esr',
  },
}

function executable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

function look({ variable, commands, places }: Search): string | undefined {
  const named = process.env[variable]
  if (named !== undefined && named !== '') {
    if (!executable(named)) throw new Error(`${variable} names ${named}, which cannot be started. Correct or unset it.`)
    return named
  }
  const folders = [...(process.env['PATH'] ?? '').split(delimiter), '/usr/bin', '/usr/local/bin', '/snap/bin']
  const onPath = commands.flatMap((command) => folders.filter((f) => f !== '').map((f) => join(f, command)))
  return [...onPath, ...places].find((path) => executable(path))
}

function install(name: string): void {
  const quiet = { env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }, stdio: 'inherit' as const }
  spawnSync('apt-get', ['update', '-q'], quiet)
  spawnSync('apt-get', ['install', '-q', '-y', '--no-install-recommends', name], quiet)
}

/**
 * The path of an installed browser. On Debian, as root, a missing one is installed from the system's packages.
 * @throws when there is none; the message says how to get one.
 */
export function findBrowser(kind: Kind): string {
  const search = searches[kind]
  const found = look(search)
  if (found !== undefined) return found
  const debian = existsSync('/etc/debian_version')
  if (debian && process.getuid?.() === 0) {
    install(search.debian)
    const installed = look(search)
    if (installed !== undefined) return installed
  }
  const how = debian ? `sudo apt-get install ${search.debian}` : `install ${kind} in the usual way of your system`
  throw new Error(`No ${kind} was found: ${how}, or set ${search.variable} to the path of its program.`)
}
