/** The licences of everything that a build ships: which packages went into its files, and their texts. */
import { readdirSync, readFileSync, realpathSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'

const root = fileURLToPath(new URL('../../', import.meta.url))

interface Manifest {
  name: string
  version: string
  license?: string
  author?: string | { name: string }
  repository?: string | { url: string }
}

/** The tools add a few lines of their own, which have no file. */
const virtual: readonly (readonly [RegExp, string])[] = [
  [/^\0?vite\//, 'vite'],
  [/^\0?rolldown[/:]/, 'rolldown'],
  [/^\0?virtual:wxt/, 'wxt'],
]

/** The folder of the package that a module belongs to; undefined for the project's own. */
export function packageOf(module: string): string | undefined {
  const tool = virtual.find(([mark]) => mark.test(module))
  if (tool) return join(root, 'node_modules', tool[1])
  const inside = /^(.*[/\\]node_modules[/\\](?:@[^/\\]+[/\\])?[^/\\?]+)/.exec(module.replace(/^\0/, ''))
  return inside?.[1]
}

const mit = (holder: string) => `MIT License

Copyright (c) ${holder}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`

/**
 * The text of a package's licence.
 * @throws when the package has none and states another than MIT.
 */
function textOf(folder: string, { name, license, author }: Manifest): string {
  const file = readdirSync(folder).find((one) => /^(licen[cs]e|copying)(\.|$)/i.test(one))
  if (file !== undefined) {
    const text = readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n')
    // A builder's file goes on with what it is made of itself; of that nothing is shipped.
    return text.replace(/\n# Licenses of bundled dependencies[^]*$/, '').trim()
  }
  if (license === 'MIT') return mit((typeof author === 'string' ? author : author?.name) ?? `the authors of ${name}`)
  throw new Error(`${name} is bundled and has no licence text. Ship none of it, or add its text here.`)
}

function entry(folder: string): { name: string; text: string } {
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest
  const { name, version, license = 'see below', repository } = manifest
  const source = typeof repository === 'string' ? repository : repository?.url
  const head = [`${name} ${version}`, `Licence: ${license}`, ...(source === undefined ? [] : [`Source: ${source}`])]
  return { name, text: [...head, '', textOf(folder, manifest)].join('\n') }
}

/** Collects the packages of one or several builds. */
export class Licences {
  readonly #folders = new Set<string>()

  /** Sees every module that left at least a character in a file. */
  readonly plugin: Plugin = {
    name: 'licences',
    generateBundle: (_, bundle) => {
      for (const file of Object.values(bundle)) {
        if (file.type !== 'chunk') continue
        for (const [module, { renderedLength }] of Object.entries(file.modules)) {
          const folder = renderedLength > 0 ? packageOf(module) : undefined
          if (folder !== undefined) this.#folders.add(realpathSync(folder))
        }
      }
    },
  }

  /** The list with all texts, the project's own first; the same for the same packages, whatever the order of builds. */
  text(): string {
    const own = readFileSync(join(root, 'LICENSE'), 'utf8').trim()
    const entries = [...this.#folders].map(entry).toSorted((a, b) => (a.name < b.name ? -1 : 1))
    const head = `Gapsum\n\n${own}\n\nIn its files are parts of these packages, each under its own licence.`
    return `${[head, ...entries.map(({ text }) => text)].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`
  }
}
