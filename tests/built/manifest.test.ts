import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

interface Manifest {
  permissions?: string[]
  host_permissions?: string[]
  optional_host_permissions?: string[]
  content_scripts?: unknown[]
  externally_connectable?: unknown
  web_accessible_resources?: unknown[]
  content_security_policy?: unknown
}

function manifest(target: string): Manifest {
  const path = fileURLToPath(new URL(`../../.output/${target}/manifest.json`, import.meta.url))
  return JSON.parse(readFileSync(path, 'utf8')) as Manifest
}

describe.each(['chrome-mv3', 'firefox-mv3'])('%s asks for nothing before the person acts', (target) => {
  it('has no standing access to any page', () => {
    const built = manifest(target)
    expect(built.host_permissions ?? []).toEqual([])
    // Offered, not given: one site at a time, when the person asks for a frame of it.
    expect(built.optional_host_permissions ?? []).toEqual(['*://*/*'])
    expect(built.content_scripts ?? []).toEqual([])
    expect(built.externally_connectable).toBeUndefined()
    // The page of the dock shows nothing without a token of its tab; Chromium gives it another address each session.
    const dock = { resources: ['dock.html'], matches: ['<all_urls>'] }
    expect(built.web_accessible_resources).toEqual([
      target === 'firefox-mv3' ? dock : { ...dock, use_dynamic_url: true },
    ])
  })

  it('lets no page of the extension load, send or run anything from elsewhere', () => {
    expect(manifest(target).content_security_policy).toEqual({
      extension_pages:
        "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' blob: data:; " +
        "connect-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none';",
    })
  })

  it('asks only for permissions that show no warning', () => {
    const allowed = ['activeTab', 'scripting', 'storage', 'unlimitedStorage', 'sidePanel']
    for (const permission of manifest(target).permissions ?? []) expect(allowed).toContain(permission)
  })
})
