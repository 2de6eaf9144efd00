/**
 * A text that stays English where the code keeps, compares or fills it, and is translated where it is shown, by `shown`.
 *
 * @example term`floor area` // 'floor area'
 */
export const term = (texts: TemplateStringsArray): string => texts[0] ?? ''
