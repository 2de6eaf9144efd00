/** Nothing that is done to a control may submit its form: a button without a type does, and some pages do at Enter. */

export async function withoutSubmitting<T>(
  document: Document,
  act: () => T | Promise<T>,
): Promise<{ result: T; held: boolean }> {
  const view = document.defaultView
  const ends = new AbortController()
  let held = false
  // On the window, so that it comes before everything the page listens with.
  view?.addEventListener(
    'submit',
    (event) => {
      held = true
      event.preventDefault()
      event.stopImmediatePropagation()
    },
    { capture: true, signal: ends.signal },
  )
  try {
    const result = await act()
    return { result, held }
  } finally {
    ends.abort()
  }
}
