import { defineConfig } from 'wxt'

/** dom-accessibility-api brings a Set of its own for browsers that have none; every browser this runs in has one. */
const ownSet = {
  name: 'own-set',
  load: (id: string) => (/dom-accessibility-api.*SetLike\.m?js$/.test(id) ? 'export default Set' : null),
}

export default defineConfig({
  manifestVersion: 3,
  imports: false,
  vite: () => ({ plugins: [ownSet] }),
  manifest: ({ browser }) => ({
    name: 'Gapsum',
    description:
      'Air-leakage figures from your readings, filled into any web form you map, with a record of every entry. Nothing leaves this machine.',
    permissions: ['activeTab', 'scripting', 'storage', 'unlimitedStorage'],
    // Asked for one site at a time, when the person wants a frame of that site filled.
    optional_host_permissions: ['*://*/*'],
    action: { default_title: 'Gapsum' },
    ...(browser === 'firefox' && {
      browser_specific_settings: { gecko: { id: 'gapsum@gapsum.example', strict_min_version: '140.0' } },
    }),
  }),
})
