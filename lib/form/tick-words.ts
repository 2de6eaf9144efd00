/** How a plan words what is on or off. */
export const checked = 'checked'
export const notChecked = 'not checked'
