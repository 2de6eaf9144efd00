const keys = new WeakMap<Element, string>()
let count = 0

/** A name for an element that lasts as long as the element does, however often the page is surveyed. */
export function keyOf(element: Element): string {
  let key = keys.get(element)
  if (key === undefined) {
    count += 1
    key = `control-${count}`
    keys.set(element, key)
  }
  return key
}
