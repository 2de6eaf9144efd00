/**
 * The small shapes that stand beside words, as the helper has them too. Decoration only: the word says it. Those of the
 * extension's own pages alone stand in page-icons.tsx, so that they do not weigh in every page that is filled.
 */

/** A path, the width of its line (0: filled), its colour if not the text's, its dashes. */
export type Line = [path: string, width: number, colour?: string, dashes?: string]

export const ring = (x: number, y: number, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0-${2 * r} 0`
export const paper = 'var(--paper)'

const shapes = {
  tw: [['M3 1l4 4-4 4', 1.6]],
  copy: [['M6.5 5.5h6a1 1 0 0 1 1 1v6a1 1 0 0 1-1 1h-6a1 1 0 0 1-1-1v-6a1 1 0 0 1 1-1zM10.5 5.5v-3h-8v8h3', 1.3]],
  tick: [['M3 8.5l3.2 3.2L13 4.8', 1.8]],
  entered: [
    [ring(8, 8, 7), 0],
    ['M4.8 8.2l2.2 2.2 4.2-4.5', 1.6, paper],
  ],
  differs: [
    ['M8 .8L15.2 8 8 15.2.8 8z', 1.3],
    ['M5 6.7h6M5 9.3h6M9.4 5l-2.8 6', 1.2],
  ],
  notfound: [
    ['M2 2h12v12H2z', 1.3, '', '2.6 2'],
    ['M5.5 8h5', 1.4],
  ],
  refused: [
    ['M5.2 1h5.6L15 5.2v5.6L10.8 15H5.2L1 10.8V5.2z', 1.4],
    ['M4.2 8h7.6', 2],
  ],
  ambiguous: [[ring(5.7, 8, 4.6) + ring(10.3, 8, 4.6), 1.3]],
  ready: [['M2 8h10M8.5 4.2L12.3 8l-3.8 3.8', 1.5]],
  replaces: [['M2 5.5h10L9.5 3M14 10.5H4L6.5 13', 1.4]],
  same: [['M3 6h10M3 10h10', 1.5]],
  hand: [[`${ring(8, 8, 6.4)}M3.6 12.4l8.8-8.8`, 1.3]],
  find: [[`${ring(6.8, 6.8, 4.8)}M10.4 10.4L15 15`, 1.4]],
  x: [['M3.5 3.5l9 9M12.5 3.5l-9 9', 1.5]],
  mark: [
    ['M1.5 2v12M18.5 2v12M1.5 8h5M13.5 8h5', 1.8],
    [ring(10, 8, 2.4), 0, 'var(--accent)'],
  ],
} satisfies Record<string, Line[]>

export type IconName = keyof typeof shapes

/** The width and height of a shape that is not 16 by 16. */
const sizes: Partial<Record<IconName, string>> = { tw: '10 10', mark: '20 16' }

interface IconProps {
  name: IconName
  /** 'i' (1rem) unless told; 'mark' for the mark, 'tw' or 'tw down' for the twisty. */
  class?: string
}

export function Icon({ name, class: className }: IconProps) {
  const size = sizes[name]
  return <Shape lines={shapes[name]} class={className ?? (size ? name : 'i')} size={size} />
}

/** Lines drawn in a box of 16 by 16, or of `size`. */
export function Shape({
  lines,
  class: className,
  size,
}: {
  lines: readonly Line[]
  class: string
  size?: string | undefined
}) {
  return (
    <svg class={className} viewBox={`0 0 ${size ?? '16 16'}`} aria-hidden="true">
      {lines.map(([d, width, colour, dashes]) => (
        <path
          d={d}
          fill={width ? 'none' : colour || 'currentColor'}
          stroke={width ? colour || 'currentColor' : 'none'}
          stroke-width={width}
          stroke-dasharray={dashes}
          stroke-linejoin="round"
        />
      ))}
    </svg>
  )
}
