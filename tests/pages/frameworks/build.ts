/** Builds a page of a component library from its npm packages, in memory. */
import { fileURLToPath } from 'node:url'
import { compile, compileModule } from 'svelte/compiler'
import { build, type Plugin } from 'vite'

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url))

const svelte: Plugin = {
  name: 'svelte',
  transform(code, id) {
    if (id.endsWith('.svelte')) return compile(code, { filename: id, css: 'injected', dev: false }).js
    if (id.endsWith('.svelte.js')) return compileModule(code, { filename: id, dev: false }).js
    return null
  },
}

export interface Built {
  script: string
  style: string
}

/** Script and style of the page that `<name>/main.<extension>` draws. */
export async function buildPage(entry: string): Promise<Built> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    mode: 'production',
    plugins: [svelte],
    // A test runner sets the mode to test, which would ask for the development runtime.
    oxc: { jsx: { runtime: 'automatic', development: false } },
    define: {
      'process.env.NODE_ENV': '"production"',
      'process.env.VITE_LOGGER_ENABLED': '""',
      __VUE_OPTIONS_API__: 'true',
      __VUE_PROD_DEVTOOLS__: 'false',
      __VUE_PROD_HYDRATION_MISMATCH_DETAILS__: 'false',
    },
    resolve: {
      alias: { vue: 'vue/dist/vue.esm-bundler.js' },
      conditions: ['browser', 'module', 'import', 'style', 'default'],
    },
    build: {
      write: false,
      minify: false,
      cssCodeSplit: false,
      chunkSizeWarningLimit: 10_000,
      lib: { entry: path(entry), name: 'page', formats: ['iife'], fileName: 'page' },
    },
  })
  const [first] = Array.isArray(built) ? built : [built]
  if (!first || !('output' in first)) throw new Error(`${entry} gave no script.`)
  let style = ''
  let script = ''
  for (const output of first.output) {
    if (output.type === 'chunk') script += output.code
    else if (output.fileName.endsWith('.css')) style += String(output.source)
  }
  return { script, style }
}
