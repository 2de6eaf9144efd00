import { fileURLToPath } from 'node:url'
import { build } from 'vite'

/** Bundles one browser script of the site in memory and returns its text. */
export async function bundle(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    root: fileURLToPath(new URL('.', import.meta.url)),
    logLevel: 'error',
    // Under a test runner vite would compile JSX for development, which a production React does not serve.
    oxc: { jsx: { development: false } },
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      write: false,
      minify: false,
      rollupOptions: { input: fileURLToPath(new URL(entry, import.meta.url)), output: { entryFileNames: 'main.js' } },
    },
  })
  const outputs = Array.isArray(built) ? built : [built]
  for (const result of outputs)
    if ('output' in result) for (const chunk of result.output) if (chunk.type === 'chunk') return chunk.code
  throw new Error(`${entry} gave no script. Build it with vite to see why.`)
}
