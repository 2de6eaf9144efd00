/** The ways a control is outlined: bound, being bound, not bound, one of several that fit, left to the person, pointed at. */
export const looks = ['bound', 'now', 'free', 'two', 'left', 'lit'] as const

export type Look = (typeof looks)[number]
