/** Longest wait in ms, for a page that is not drawn: a sidebar that is hidden, a tab in the background. */
const patience = 250

/**
 * Reads the rest of a page once what stands in its HTML is drawn: a browser shows a popup when it has loaded, and scripts
 * that it waits for would keep the person before nothing. `open` may be called twice, as `import()` may.
 */
export function afterFirstPaint(open: () => Promise<unknown>): void {
  // The frame of the callback is drawn after it: a task later it stands on the screen.
  requestAnimationFrame(() => setTimeout(() => void open()))
  setTimeout(() => void open(), patience)
}
