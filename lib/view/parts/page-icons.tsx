/** The shapes that only the extension's own pages draw, beside those of icons.tsx. Decoration only: the word says it. */
import { Icon, type IconName, type Line, paper, ring, Shape } from './icons.tsx'

const link = (x: number) => `M${x + 2.8} 5.2h2.4a2.8 2.8 0 0 1 0 5.6h-2.4a2.8 2.8 0 0 1 0-5.6z`

const shapes = {
  good: [
    [ring(8, 8, 6.6), 1.3],
    ['M5 8.2l2.1 2.1L11.2 6', 1.5],
  ],
  doubtful: [
    ['M8 1.8l6.7 12H1.3z', 1.4],
    ['M8 6v4M8 11.2v1.4', 1.5],
  ],
  bad: [
    ['M1.5 1.5h13v13h-13z', 0],
    ['M5 5l6 6M11 5l-6 6', 1.7, paper],
  ],
  none: [[ring(8, 8, 6.4), 1.3, '', '2.4 2']],
  chain: [[link(1) + link(7), 1.4]],
  beside: [
    ['M1.5 2.5h13v11h-13zM10 2.5v11', 1.3],
    ['M3.5 5.5h4M3.5 8h4M3.5 10.5h2.5', 1.2],
  ],
} satisfies Record<string, Line[]>

type OwnName = keyof typeof shapes
export type PageIconName = IconName | OwnName

const isOwn = (name: PageIconName): name is OwnName => Object.hasOwn(shapes, name)

export function PageIcon({ name, class: className }: { name: PageIconName; class?: string }) {
  if (isOwn(name)) return <Shape lines={shapes[name]} class={className ?? 'i'} />
  return <Icon name={name} {...(className !== undefined && { class: className })} />
}
