/** What the checker of add-ons says of the Firefox build; the same checker runs when it is handed in. */
import { execFileSync } from 'node:child_process'
import { readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

interface Finding {
  code: string
  file: string
  message: string
}

interface Report {
  errors: Finding[]
  notices: Finding[]
  warnings: Finding[]
}

it('has no error, and no warning beyond those that DEVELOPERS.md explains', () => {
  const linter = join(root, 'node_modules/addons-linter/bin/addons-linter')
  const said = execFileSync(process.execPath, [linter, '--output', 'json', join(root, '.output/firefox-mv3')], {
    encoding: 'utf8',
    maxBuffer: 1e8,
  })
  const { errors, notices, warnings } = JSON.parse(said) as Report
  expect(errors).toEqual([])
  expect(notices).toEqual([])
  // The library that draws the views can set markup as text: one place of it, once in each bundle that draws.
  expect([...new Set(warnings.map(({ code }) => code))]).toEqual(['UNSAFE_VAR_ASSIGNMENT'])
  // The library that reads PDF forms, once in each of its two files.
  const loading = warnings.filter(({ message }) => message.startsWith('Unsafe call to import'))
  expect(loading.map(({ file }) => file.replace(/-[\w-]{8}(?=\.)/, '')).toSorted()).toEqual([
    'assets/pdf.worker.min.mjs',
    'chunks/pdf.js',
  ])
  for (const { file, message } of warnings.filter((one) => !loading.includes(one))) {
    expect(message).toMatch(/innerHTML/)
    const code = readFileSync(join(root, '.output/firefox-mv3', file), 'utf8')
    expect(code.match(/\.innerHTML\s*=(?!=)/g)).toHaveLength(1)
    expect(code).toContain('dangerouslySetInnerHTML')
  }
}, 120_000)

it('never sets markup as text in its own code', () => {
  for (const folder of ['lib', 'entrypoints'])
    for (const name of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      if (!/\.tsx?$/.test(name)) continue
      const code = readFileSync(join(root, folder, name), 'utf8')
      expect(/innerHTML|outerHTML|insertAdjacentHTML|dangerouslySet/i.test(code) ? name : '').toBe('')
    }
})
