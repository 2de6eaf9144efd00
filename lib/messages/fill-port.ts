/** Name of the line that the helper holds open to the background while it fills; the id of the fill follows. */
export const fillPort = 'fill:'
