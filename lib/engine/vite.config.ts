/** Builds the engine as an npm package: one module, its types and a package.json. */
import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import manifest from '../../package.json' with { type: 'json' }

const root = fileURLToPath(new URL('../..', import.meta.url))
const outDir = `${root}.output/package`

export default defineConfig({
  root,
  publicDir: false,
  build: {
    outDir,
    emptyOutDir: true,
    target: 'es2023',
    lib: { entry: 'lib/engine/index.ts', formats: ['es'], fileName: () => 'engine.js' },
    rolldownOptions: { output: { minify: true } },
  },
})
