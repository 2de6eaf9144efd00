/** The list comes first: what else reads the book waits so many milliseconds after the page has opened. */
export const afterList = 500
