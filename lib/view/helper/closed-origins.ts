import { farOrigins } from '../../form/page/far.ts'
import { hiddenBecause } from '../../form/page/visible.ts'

/** Origins of the frames on this page that neither the page nor a copy of the helper lets one look into. */
export function closedOrigins(): string[] {
  const open = farOrigins()
  const found = new Set<string>()
  for (const frame of document.querySelectorAll('iframe')) {
    if (frame.contentDocument || hiddenBecause(frame)) continue
    const { origin, protocol } = new URL(frame.src || 'about:blank', location.href)
    if (protocol.startsWith('http') && !open.has(origin)) found.add(origin)
  }
  return [...found]
}
