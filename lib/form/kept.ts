/** Values that the extension's scripts share in their own world of a page. */

/**
 * A value that a script of ours has set; undefined for what the page's markup lends every world under that name: an
 * element with such an id is a property of the window there too.
 */
export function kept<K extends keyof typeof globalThis>(name: K): (typeof globalThis)[K] | undefined {
  return Object.hasOwn(globalThis, name) ? globalThis[name] : undefined
}
