/* Loaded before any attack: keeps the browser's own functions, so that the tests see what the page really holds. */
{
  const { value } = Object.getOwnPropertyDescriptors(HTMLInputElement.prototype)
  const all = Document.prototype.querySelectorAll
  const { get: dataset } = Object.getOwnPropertyDescriptor(HTMLElement.prototype, 'dataset')
  const { get: inside } = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentDocument')
  const every = setInterval.bind(window)
  const put = Array.prototype.push
  const stringOf = JSON.stringify
  const controls = (document, found = []) => {
    for (const each of Reflect.apply(all, document, ['input'])) Reflect.apply(put, found, [each])
    for (const frame of Reflect.apply(all, document, ['iframe'])) {
      const its = Reflect.apply(inside, frame, [])
      if (its) controls(its, found)
    }
    return found
  }
  const watch = {
    ticks: 0,
    /** Everything that came to the page's ears. */
    heard: [],
    submitted: 0,
    told: () => stringOf(watch.heard) + watch.held(),
    /** What the named controls hold, and what stands in any other. */
    held: () => {
      const named = {}
      const others = []
      for (const each of controls(document)) {
        const text = Reflect.apply(value.get, each, [])
        const { is } = Reflect.apply(dataset, each, [])
        if (is) named[is] = text
        else if (text) Reflect.apply(put, others, [text])
      }
      return stringOf({ named, others })
    },
  }
  every(() => (watch.ticks += 1), 50)
  const hear = (text) => Reflect.apply(put, watch.heard, [text])
  addEventListener('message', (event) => hear(`message ${stringOf(event.data)}`), true)
  for (const type of ['gapsum', 'fill', 'plan', 'receipt']) addEventListener(type, () => hear(type), true)
  addEventListener('submit', (event) => {
    event.preventDefault()
    watch.submitted += 1
  })
  const { dispatchEvent } = EventTarget.prototype
  EventTarget.prototype.dispatchEvent = function (event) {
    if (event instanceof CustomEvent) hear(`custom event ${event.type}`)
    return Reflect.apply(dispatchEvent, this, [event])
  }
  Object.defineProperty(window, 'watch', { value: watch })
}
