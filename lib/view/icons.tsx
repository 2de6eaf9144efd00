/** The small shapes that stand beside words. Decoration only: the word says it. */
import type { ComponentChildren } from 'preact'

const shapes = {
  tw: {
    box: '0 0 10 10',
    draw: () => (
      <>
        <path d="M3 1l4 4-4 4" fill="none" stroke="currentColor" stroke-width="1.6" />
      </>
    ),
  },
  copy: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <g fill="none" stroke="currentColor" stroke-width="1.3">
          <rect x="5.5" y="5.5" width="8" height="8" rx="1" />
          <path d="M10.5 5.5v-3h-8v8h3" />
        </g>
      </>
    ),
  },
  tick: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M3 8.5l3.2 3.2L13 4.8" fill="none" stroke="currentColor" stroke-width="1.8" />
      </>
    ),
  },
  good: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <circle cx="8" cy="8" r="6.6" fill="none" stroke="currentColor" stroke-width="1.3" />
        <path d="M5 8.2l2.1 2.1L11.2 6" fill="none" stroke="currentColor" stroke-width="1.5" />
      </>
    ),
  },
  doubtful: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M8 1.8l6.7 12H1.3z" fill="none" stroke="currentColor" stroke-width="1.4" stroke-linejoin="round" />
        <path d="M8 6v4M8 11.2v1.4" stroke="currentColor" stroke-width="1.5" />
      </>
    ),
  },
  bad: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M1.5 1.5h13v13h-13z" fill="currentColor" />
        <path d="M5 5l6 6M11 5l-6 6" stroke="var(--paper)" stroke-width="1.7" />
      </>
    ),
  },
  none: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <circle cx="8" cy="8" r="6.4" fill="none" stroke="currentColor" stroke-width="1.3" stroke-dasharray="2.4 2" />
      </>
    ),
  },
  entered: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <circle cx="8" cy="8" r="7" fill="currentColor" />
        <path d="M4.8 8.2l2.2 2.2 4.2-4.5" fill="none" stroke="var(--paper)" stroke-width="1.6" />
      </>
    ),
  },
  differs: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M8 .8L15.2 8 8 15.2.8 8z" fill="none" stroke="currentColor" stroke-width="1.3" />
        <path d="M5 6.7h6M5 9.3h6M9.4 5l-2.8 6" stroke="currentColor" stroke-width="1.2" />
      </>
    ),
  },
  notfound: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M2 2h12v12H2z" fill="none" stroke="currentColor" stroke-width="1.3" stroke-dasharray="2.6 2" />
        <path d="M5.5 8h5" stroke="currentColor" stroke-width="1.4" />
      </>
    ),
  },
  refused: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M5.2 1h5.6L15 5.2v5.6L10.8 15H5.2L1 10.8V5.2z" fill="none" stroke="currentColor" stroke-width="1.4" />
        <path d="M4.2 8h7.6" stroke="currentColor" stroke-width="2" />
      </>
    ),
  },
  ambiguous: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <g fill="none" stroke="currentColor" stroke-width="1.3">
          <circle cx="5.7" cy="8" r="4.6" />
          <circle cx="10.3" cy="8" r="4.6" />
        </g>
      </>
    ),
  },
  ready: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M2 8h10M8.5 4.2L12.3 8l-3.8 3.8" fill="none" stroke="currentColor" stroke-width="1.5" />
      </>
    ),
  },
  replaces: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M2 5.5h10L9.5 3M14 10.5H4L6.5 13" fill="none" stroke="currentColor" stroke-width="1.4" />
      </>
    ),
  },
  same: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M3 6h10M3 10h10" stroke="currentColor" stroke-width="1.5" />
      </>
    ),
  },
  hand: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <circle cx="8" cy="8" r="6.4" fill="none" stroke="currentColor" stroke-width="1.3" />
        <path d="M3.6 12.4l8.8-8.8" stroke="currentColor" stroke-width="1.3" />
      </>
    ),
  },
  chain: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <g fill="none" stroke="currentColor" stroke-width="1.4">
          <rect x="1" y="5.2" width="8" height="5.6" rx="2.8" />
          <rect x="7" y="5.2" width="8" height="5.6" rx="2.8" />
        </g>
      </>
    ),
  },
  find: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <g fill="none" stroke="currentColor" stroke-width="1.4">
          <circle cx="6.8" cy="6.8" r="4.8" />
          <path d="M10.4 10.4L15 15" />
        </g>
      </>
    ),
  },
  x: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M3.5 3.5l9 9M12.5 3.5l-9 9" stroke="currentColor" stroke-width="1.5" />
      </>
    ),
  },
  beside: {
    box: '0 0 16 16',
    draw: () => (
      <>
        <path d="M1.5 2.5h13v11h-13zM10 2.5v11" fill="none" stroke="currentColor" stroke-width="1.3" />
        <path d="M3.5 5.5h4M3.5 8h4M3.5 10.5h2.5" stroke="currentColor" stroke-width="1.2" />
      </>
    ),
  },
  mark: {
    box: '0 0 20 16',
    draw: () => (
      <>
        <path d="M1.5 2v12M18.5 2v12M1.5 8h5M13.5 8h5" fill="none" stroke="currentColor" stroke-width="1.8" />
        <circle cx="10" cy="8" r="2.4" fill="var(--accent)" />
      </>
    ),
  },
} satisfies Record<string, { box: string; draw: () => ComponentChildren }>

export type IconName = keyof typeof shapes

interface IconProps {
  name: IconName
  /** 'i' (1rem) unless told; 'mark' for the mark, 'tw' or 'tw down' for the twisty. */
  class?: string
}

export function Icon({ name, class: className }: IconProps) {
  const shape = shapes[name]
  return (
    <svg class={className ?? (name === 'mark' || name === 'tw' ? name : 'i')} viewBox={shape.box} aria-hidden="true">
      {shape.draw()}
    </svg>
  )
}
