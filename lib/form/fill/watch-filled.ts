/** Looking on after a fill: some pages change what was entered seconds later. */
import { alive } from '../page/dom.ts'
import { asItWas, readAgain } from './fill.ts'
import type { Plan } from './plan.ts'
import type { ReceiptLine } from '../schema.ts'
import { isExtra } from '../kinds/extra-kinds.ts'

/** How often the controls are looked at, in ms. */
const every = 400

/**
 * Hears each line whose control the page has changed since; what a hand changes is the person's own business.
 * @param onLine takes the line as it is now
 */
export function watchFilled(
  plan: Plan,
  lines: readonly ReceiptLine[],
  onLine: (line: ReceiptLine) => void,
  signal: AbortSignal,
): void {
  const now = new Map(lines.map((line) => [line.binding, line]))
  const byHand = new Set<EventTarget>()
  const hand = (event: Event) => {
    if (event.isTrusted) for (const each of event.composedPath().slice(0, 6)) byHand.add(each)
  }
  const documents = new Set(
    [...plan.targets.values()].flatMap(({ element }) => (alive(element) ? element.ownerDocument : [])),
  )
  for (const document of documents)
    for (const type of ['beforeinput', 'keydown', 'pointerdown'])
      document.defaultView?.addEventListener(type, hand, { capture: true, signal })
  const look = () => {
    for (const line of now.values()) {
      if ((line.outcome !== 'entered' && line.outcome !== 'differs') || asItWas(plan, line)) continue
      const again = readAgain(plan, line)
      if (again === line) continue
      now.set(line.binding, again)
      const elements = plan.targets.get(line.binding)?.elements ?? []
      const { kind } = plan.targets.get(line.binding) ?? {}
      // The list of a drawn control may stand anywhere in the page.
      const hands = elements.some((each) => byHand.has(each)) || (kind && isExtra(kind) && byHand.size > 0)
      if (!hands) onLine(again)
    }
    byHand.clear()
  }
  const timer = setInterval(look, every)
  signal.addEventListener('abort', () => clearInterval(timer))
}
