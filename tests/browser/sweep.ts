/** What must hold in every view and state, asked of the page itself: every shadow root that can be reached is looked into. */
import type { Page } from 'puppeteer-core'
import { dockOf } from './door.ts'
import { tooSmallIn } from './touch-targets.ts'

// The function is sent into the page as text, so all that it calls stands inside it.
/* oxlint-disable unicorn/consistent-function-scoping */
/** The sentences of what is wrong in a document, or in the tree below `start`. Runs in the page. */
export function faultsIn(start: Document | ShadowRoot | Element = document): string[] {
  const found: string[] = []
  const words = (one: Element) => `${one.outerHTML.slice(0, 120)}`.replaceAll(/\s+/g, ' ')
  const drawn = (one: Element) => {
    const { width, height } = one.getBoundingClientRect()
    return width > 0 && height > 0 && getComputedStyle(one).visibility === 'visible'
  }
  const nameOf = (one: HTMLInputElement, root: Document | ShadowRoot | Element) => {
    const by = one.getAttribute('aria-labelledby')?.split(' ') ?? []
    const named = by.map((id) => root.querySelector(`[id="${CSS.escape(id)}"]`)?.textContent ?? '').join(' ')
    const labels = [...(one.labels ?? [])].map((label) => label.textContent ?? '').join(' ')
    return (named || one.ariaLabel || labels || one.title).trim()
  }
  const look = (root: Document | ShadowRoot | Element) => {
    const ids = new Map<string, Element>()
    for (const one of root.querySelectorAll('*')) {
      if (one.shadowRoot) look(one.shadowRoot)
      if (one.id !== '') {
        const other = ids.get(one.id)
        if (other) found.push(`The id ${one.id} is there twice: ${words(other)} and ${words(one)}`)
        else ids.set(one.id, one)
      }
      for (const kind of ['aria-describedby', 'aria-labelledby', 'aria-controls'])
        for (const id of one.getAttribute(kind)?.split(' ').filter(Boolean) ?? [])
          if (!root.querySelector(`[id="${CSS.escape(id)}"]`)) found.push(`${kind} names no element: ${words(one)}`)
      if (!one.matches('input:not([type=hidden]), select, textarea') || !drawn(one)) continue
      const field = one as HTMLInputElement
      if (nameOf(field, root) === '') found.push(`A field has no name: ${words(one)}`)
      for (const label of field.labels ?? [])
        if (label.control !== field) found.push(`A label belongs to another field: ${words(label)}`)
      if (!matchMedia('(forced-colors: active)').matches || field.matches('[type=checkbox], [type=radio], [type=file]'))
        continue
      // A field inside a framed label has its edge around the frame.
      const edged = [one, one.closest('label')].some((holder) => {
        if (!holder) return false
        const { borderBottomStyle, borderBottomWidth, borderBottomColor, backgroundColor } = getComputedStyle(holder)
        return (
          !['none', 'hidden'].includes(borderBottomStyle) &&
          Number.parseFloat(borderBottomWidth) >= 1 &&
          borderBottomColor !== backgroundColor
        )
      })
      if (!edged) found.push(`A field has no edge in forced colours: ${words(one)}`)
      if (one.localName === 'select' && getComputedStyle(one).appearance === 'none')
        found.push(`A list has no arrow in forced colours: ${words(one)}`)
    }
    for (const label of root.querySelectorAll('label[for]'))
      if (!root.querySelector(`[id="${CSS.escape(label.getAttribute('for') ?? '')}"]`))
        found.push(`A label is of no field: ${words(label)}`)
  }
  look(start)
  return found
}

/** The same in the reader's own colours and without, and with a finger in the place of the mouse; `own`: sizes only of elements so named. */
export async function sweep(page: Page, own = ''): Promise<string[]> {
  const plain = await page.evaluate(faultsIn as () => string[])
  const client = await page.createCDPSession()
  await client.send('Emulation.setEmulatedMedia', { features: [{ name: 'forced-colors', value: 'active' }] })
  const forced = await page.evaluate(faultsIn as () => string[])
  await client.send('Emulation.setEmulatedMedia', { features: [] })
  await client.send('Emulation.setTouchEmulationEnabled', { enabled: true })
  const small = await page.evaluate(tooSmallIn as (own: string) => string[], own)
  await client.send('Emulation.setTouchEmulationEnabled', { enabled: false })
  await client.detach()
  return [...new Set([...plain, ...forced, ...small])]
}

/** The same of the dock, which stands in a frame of its own in somebody else's page. */
export async function sweepDock(page: Page): Promise<string[]> {
  const client = dockOf(page)
  const found: string[] = []
  const look = async (within: () => string[]) => {
    const { result, exceptionDetails } = await client.send('Runtime.evaluate', {
      expression: `(${within.toString()})()`,
      returnByValue: true,
    })
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
    found.push(...(result.value as string[]))
  }
  for (const value of ['none', 'active']) {
    await client.send('Emulation.setEmulatedMedia', { features: [{ name: 'forced-colors', value }] })
    await look(faultsIn)
  }
  await client.send('Emulation.setEmulatedMedia', { features: [] })
  await client.send('Emulation.setTouchEmulationEnabled', { enabled: true })
  await look(tooSmallIn)
  await client.send('Emulation.setTouchEmulationEnabled', { enabled: false })
  return [...new Set(found)]
}
