/** Controls in frames of other origins: known by what the helper's copy in the frame says, written by asking it. */
import type { Control } from './controls.ts'
import type { Image, Written } from './image.ts'
import type { Address } from './schema.ts'

export interface Far {
  image: Image
  write: (text: string) => Promise<Written>
}

const frames = new Map<number, { address: Address; controls: Control[] }>()
const hearers = new Set<() => void>()

/** An element that is on no page and says of itself what the one in the frame says. */
function standIn({ clues, attributes }: Image): HTMLElement {
  const element = document.createElement(clues.kind === 'textarea' ? 'textarea' : 'input')
  for (const [name, value] of attributes) element.setAttribute(name, value)
  return element
}

function drawn(image: Image, address: Address, write: Far['write'], before: Control | undefined): Control {
  const clues = { ...image.clues, frame: address }
  const element = before?.element ?? standIn(image)
  return {
    kind: clues.kind,
    element,
    elements: [element],
    name: clues.name,
    section: clues.section,
    position: clues.position,
    far: { image: { ...image, clues }, write },
  }
}

/** Takes what a frame shows now; nothing more of it when it shows nothing. */
export function takeFrame(
  frame: number,
  address: Address,
  images: readonly Image[],
  write: (key: string, text: string) => Promise<Written>,
): void {
  const before = frames.get(frame)?.controls ?? []
  const controls = images.map((image) =>
    drawn(
      image,
      address,
      (text) => write(image.key, text),
      before.find(({ far }) => far?.image.key === image.key),
    ),
  )
  if (controls.length > 0) frames.set(frame, { address, controls })
  else frames.delete(frame)
  for (const hear of hearers) hear()
}

export function forgetFrames(): void {
  frames.clear()
}

export function farControls(): Control[] {
  return [...frames.values()].flatMap(({ controls }) => controls)
}

/** Origins of the frames that are heard of. */
export function farOrigins(): Set<string> {
  return new Set([...frames.values()].map(({ address }) => address.origin))
}

/** Hears when frames show something else; ends with the signal. */
export function onFrames(hear: () => void, signal: AbortSignal): void {
  hearers.add(hear)
  signal.addEventListener('abort', () => hearers.delete(hear))
}
