import { defineConfig } from 'wxt'

export default defineConfig({
  manifestVersion: 3,
  imports: false,
  manifest: ({ browser }) => ({
    name: 'Gapsum',
    description:
      'Air-leakage figures from your readings, filled into any web form you map, with a record of every entry. Nothing leaves this machine.',
    permissions: ['activeTab', 'scripting', 'storage', 'unlimitedStorage'],
    action: { default_title: 'Gapsum' },
    ...(browser === 'firefox' && {
      browser_specific_settings: { gecko: { id: 'gapsum@gapsum.example', strict_min_version: '140.0' } },
    }),
  }),
})
