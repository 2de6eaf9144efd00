/** Builds the engine as an npm package in .output/package/: one module, its types and a package.json. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Plugin, defineConfig } from 'vite'
import manifest from '../../package.json' with { type: 'json' }

const root = fileURLToPath(new URL('../../', import.meta.url))
const outDir = `${root}.output/package`

/** Types as a tree beside the module, and the package.json that names both. */
function describe(): Plugin {
  return {
    name: 'types-and-manifest',
    apply: 'build',
    closeBundle() {
      execFileSync(`${root}node_modules/.bin/tsc`, ['-p', 'lib/engine/tsconfig.json', '--outDir', `${outDir}/types`], {
        cwd: root,
        stdio: 'inherit',
      })
      const entry = { types: './types/engine/index.d.ts', default: './engine.js' }
      const described = {
        name: `${manifest.name}-engine`,
        version: manifest.version,
        description: 'Reduces air-leakage readings of houses and ducts to the figures that codes and programs ask for.',
        license: manifest.license,
        type: 'module',
        sideEffects: false,
        exports: { '.': entry, './engine.js': entry, './package.json': './package.json' },
        // Only the types of the schemas name it; the module holds all that it runs.
        dependencies: { zod: manifest.dependencies.zod },
      }
      mkdirSync(outDir, { recursive: true })
      writeFileSync(`${outDir}/package.json`, `${JSON.stringify(described, null, 2)}\n`)
    },
  }
}

export default defineConfig({
  root,
  publicDir: false,
  plugins: [describe()],
  build: {
    outDir,
    emptyOutDir: true,
    target: 'es2023',
    reportCompressedSize: true,
    lib: { entry: 'lib/engine/index.ts', formats: ['es'], fileName: () => 'engine.js' },
    rolldownOptions: { output: { minify: true } },
  },
})
