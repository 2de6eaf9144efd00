/** Builds the npm package in .output/package/: the engine, the widget, one file for a script tag, types, manifest. */
import { execFileSync } from 'node:child_process'
import { copyFileSync, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { languages, read } from '../words/collect.ts'
import { english, inLanguage } from '../words/plugin.ts'
import manifest from '../../package.json' with { type: 'json' }
import { Licences } from './licences.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const outDir = join(root, '.output/package')
const licences = new Licences()

interface Bundle {
  entry: string
  file: string
  format: 'es' | 'iife'
}

const bundles: Bundle[] = [
  { entry: 'lib/engine/index.ts', file: 'engine.js', format: 'es' },
  { entry: 'lib/widget/index.ts', file: 'widget.js', format: 'es' },
  { entry: 'lib/widget/index.ts', file: 'gapsum-widget.js', format: 'iife' },
]

/** `widget.js` in Spanish is `widget.es.js`. */
const inWords = (file: string, language: string): string => file.replace(/\.js$/, `.${language}.js`)

/** With English words where no language is given. */
async function bundle({ entry, file, format }: Bundle, language?: string): Promise<void> {
  await build({
    configFile: false,
    root,
    logLevel: 'warn',
    publicDir: false,
    plugins: [licences.plugin, language === undefined ? english() : inLanguage(language, read(language))],
    define: { 'process.env.NODE_ENV': '"production"' },
    // Under a test runner vite would compile JSX for development.
    oxc: { jsx: { development: false } },
    build: {
      outDir,
      emptyOutDir: false,
      target: 'es2023',
      // Browsers that have light-dark().
      cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
      lib: {
        entry,
        formats: [format],
        name: 'Gapsum',
        fileName: () => (language === undefined ? file : inWords(file, language)),
      },
      rolldownOptions: {
        output: { minify: true },
        // Schemas that nothing in a bundle uses have no effect of their own; defining the element has.
        treeshake: { moduleSideEffects: (id) => id.endsWith('lib/widget/index.ts') },
      },
    },
  })
}

function declarations(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => path.endsWith('.d.ts'))
}

/** Declarations as a tree beside the modules; those that no entry leads to are dropped. */
function types(): void {
  const folder = join(outDir, 'types')
  execFileSync(join(root, 'node_modules/.bin/tsc'), ['-p', 'lib/package/tsconfig.json', '--outDir', folder], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  })
  const entries = ['engine/index', 'widget/index', 'widget/react', 'widget/vue'].map((name) =>
    join(folder, `${name}.d.ts`),
  )
  const reached = new Set<string>()
  for (let path = entries.pop(); path !== undefined; path = entries.pop()) {
    if (reached.has(path) || !existsSync(path)) continue
    reached.add(path)
    // Declarations name their neighbours as the sources do; a package names the modules that they describe.
    const text = readFileSync(path, 'utf8').replaceAll(
      /((?:from|import\()\s*["'])(\.[^"']+)\.tsx?(?=["'])/g,
      (_, before: string, target: string) => {
        entries.push(`${resolve(dirname(path), target)}.d.ts`)
        return `${before}${target}.js`
      },
    )
    writeFileSync(path, text)
  }
  for (const path of declarations(folder)) if (!reached.has(path)) rmSync(path)
  for (const name of readdirSync(folder)) {
    const path = join(folder, name)
    if (statSync(path).isDirectory() && declarations(path).length === 0) rmSync(path, { recursive: true })
  }
}

const entry = (name: string, file: string) => ({ types: `./types/${name}.d.ts`, default: `./${file}` })

function describe(): void {
  const engine = entry('engine/index', 'engine.js')
  const widget = entry('widget/index', 'widget.js')
  const translated = languages().flatMap((language) =>
    bundles.map(({ entry: source, file, format }) => {
      const name = `./${inWords(file, language)}`
      return [name, format === 'es' ? entry(source.slice('lib/'.length, -'.ts'.length), name.slice(2)) : name]
    }),
  )
  const described = {
    name: manifest.name,
    version: manifest.version,
    description:
      'Air-leakage figures of houses and ducts from readings: the engine, and the calculator as an element for any page.',
    license: manifest.license,
    type: 'module',
    sideEffects: ['./widget*.js', './gapsum-widget*.js'],
    exports: {
      '.': widget,
      './engine': engine,
      './engine.js': engine,
      './widget': widget,
      './widget.js': widget,
      './gapsum-widget.js': './gapsum-widget.js',
      ...Object.fromEntries(translated),
      // Types only: importing them makes the element known to JSX and templates.
      './react': entry('widget/react', 'nothing.js'),
      './vue': entry('widget/vue', 'nothing.js'),
      './package.json': './package.json',
    },
    // Only the types of the schemas name it; the modules hold all that they run.
    dependencies: { zod: manifest.dependencies.zod },
    unpkg: './gapsum-widget.js',
    jsdelivr: './gapsum-widget.js',
  }
  writeFileSync(join(outDir, 'package.json'), `${JSON.stringify(described, null, 2)}\n`)
  writeFileSync(join(outDir, 'nothing.js'), 'export {}\n')
  writeFileSync(join(outDir, 'licences.txt'), licences.text())
  copyFileSync(join(root, 'LICENSE'), join(outDir, 'LICENSE'))
  copyFileSync(join(root, 'lib/package/README.md'), join(outDir, 'README.md'))
}

rmSync(outDir, { recursive: true, force: true })
for (const one of bundles) {
  await bundle(one)
  for (const language of languages()) await bundle(one, language)
}
types()
describe()
