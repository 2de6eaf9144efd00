/** Start of the reason for which a choice may still succeed later: options can arrive after a request. */
export const noOption = 'has no option'
