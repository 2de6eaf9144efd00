import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { defineConfig } from 'wxt'
import { officeSchema } from './lib/book/office-schema.ts'
import { Licences } from './lib/package/licences.ts'
import { named } from './lib/words/manifest.ts'
import { translated } from './lib/words/plugin.ts'

/** Pictures are drawn from the book's own bytes and from styles; styles stand in pages and are set by what draws them. */
const policy = Object.entries({
  'default-src': "'self'",
  'script-src': "'self'",
  'style-src': "'self' 'unsafe-inline'",
  'img-src': "'self' blob: data:",
  'connect-src': "'self'",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
})
  .map((directive) => `${directive.join(' ')};`)
  .join(' ')

/** One set for each browser: wxt runs several builds for one, and reads this file anew for the next. */
const licences = new Licences()

export default defineConfig({
  manifestVersion: 3,
  imports: false,
  vite: () => ({
    plugins: [licences.plugin, translated()],
    build: { cssTarget: ['chrome130', 'firefox140'], modulePreload: { polyfill: false } },
  }),
  hooks: {
    'vite:build:extendConfig': (entrypoints, config) => {
      // What popup and sidebar wait for before their first paint comes as one file.
      if (!entrypoints.some(({ name }) => name === 'popup')) return
      const groups = [
        { name: 'start', test: /calculator\/(start|after-first-paint)\.ts|vite\/preload-helper|wxt-html-plugins/ },
        // Small parts that every page reads: one file opens sooner than ten.
        {
          name: 'shared',
          test: /lib\/(book\/(devices|jobs|maps|settings)|words\/names|job\/job-title|extension\/practice|form\/map\/(address|steps))\.ts$/,
        },
      ]
      Object.assign(config.build!.rolldownOptions!.output!, { codeSplitting: { groups } })
    },
    'build:publicAssets': (_, files) => {
      files.push({ relativeDest: 'office-policy.json', contents: JSON.stringify(officeSchema(), null, 2) })
    },
    'build:done': ({ config }) => writeFileSync(join(config.outDir, 'licences.txt'), licences.text()),
  },
  zip: {
    // A store's reviewer builds from this archive: with the lock file and the dotfiles, without tests and pictures.
    dotSources: true,
    excludeSources: ['.git/**', '.ci/**', '.wxt/**', '.output/**', 'tests/**', 'node_modules'],
  },
  manifest: ({ browser, command }) => ({
    name: named('name'),
    default_locale: 'en',
    description: named('description'),
    permissions: ['activeTab', 'scripting', 'storage', 'unlimitedStorage'],
    // No page of the extension loads from elsewhere, sends anything anywhere, or runs what did not come with it. A
    // development build reads its scripts from a server.
    ...(command === 'build' && { content_security_policy: { extension_pages: policy } }),
    // Asked for one site at a time, when the person wants a frame of that site filled.
    optional_host_permissions: ['*://*/*'],
    // The dock stands in a frame of its own, which no script, style or font of a page reaches.
    web_accessible_resources: [
      { resources: ['dock.html'], matches: ['<all_urls>'], ...(browser !== 'firefox' && { use_dynamic_url: true }) },
    ],
    // Firefox puts a new button into a menu unless told where it belongs.
    action: { default_title: named('name'), ...(browser === 'firefox' && { default_area: 'navbar' }) },
    // The browser lets the person change each of these keys.
    commands: {
      _execute_action: { suggested_key: { default: 'Alt+Shift+G' } },
      beside: { suggested_key: { default: 'Alt+Shift+K' }, description: named('beside') },
      fill: { suggested_key: { default: 'Alt+Shift+F' }, description: named('fill') },
    },
    // Firefox takes a policy without a schema, and does not know this key.
    ...(browser !== 'firefox' && { storage: { managed_schema: 'office-policy.json' } }),
    ...(browser === 'firefox' && {
      browser_specific_settings: {
        gecko: {
          id: 'gapsum@gapsum.example',
          strict_min_version: '142.0',
          data_collection_permissions: { required: ['none'] },
        },
      },
    }),
  }),
})
