/** Roles and names of what a part of the screen shows, for a browser whose own are not to be had beside a popup. */
import { computeAccessibleName, getRole } from 'dom-accessibility-api'

export function named(root: Element | ShadowRoot, role: string): { element: Element; name: string }[] {
  const view = root.ownerDocument.defaultView!
  // Beside a page the window's functions do not know by themselves whose they are.
  const options = { getComputedStyle: view.getComputedStyle.bind(view) }
  return [...root.querySelectorAll('*')].flatMap((element) =>
    getRole(element) === role &&
    element.checkVisibility({ visibilityProperty: true }) &&
    element.closest('[aria-hidden=true], [inert]') === null
      ? [{ element, name: computeAccessibleName(element, options) }]
      : [],
  )
}
