/** Elements that the helper itself stands in, known one by one: a page can give a cover of its own any name. */
export const ownHosts = new WeakSet<Element>()
