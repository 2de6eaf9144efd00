/** Controls in frames of other origins: known by what the helper's copy in the frame says, written by asking it. */
import type { Control } from './controls.ts'
import type { FarMark, Image, Written } from './image.ts'
import type { Look } from '../looks.ts'
import type { Address } from '../schema.ts'

export interface Far {
  image: Image
  write: (text: string) => Promise<Written>
}

interface Frame {
  address: Address
  controls: Control[]
  /** What the frame was last asked to outline. */
  marked?: string
}

const frames = new Map<number, Frame>()
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
  const before = frames.get(frame)
  const controls = images.map((image) =>
    drawn(
      image,
      address,
      (text) => write(image.key, text),
      before?.controls.find(({ far }) => far?.image.key === image.key),
    ),
  )
  if (controls.length > 0) frames.set(frame, { ...before, address, controls })
  else frames.delete(frame)
  for (const hear of hearers) hear()
}

export function forgetFrames(): void {
  frames.clear()
}

export function farControls(): Control[] {
  return [...frames.values()].flatMap(({ controls }) => controls)
}

/** The control that a frame calls by this key. */
export function farControl(frame: number, key: string): Control | undefined {
  return frames.get(frame)?.controls.find(({ far }) => far?.image.key === key)
}

/** Has each frame outline its own controls; a frame that was asked for the same before is left alone. */
export function markFrames(
  marks: readonly { elements: readonly Element[]; look: Look; tag: string }[],
  ask: (frame: number, marks: FarMark[]) => void,
): void {
  for (const [number, frame] of frames) {
    const own: FarMark[] = []
    for (const { element, far } of frame.controls)
      for (const { elements, look, tag } of marks)
        if (far && elements[0] === element) own.push({ key: far.image.key, look, tag })
    const asked = JSON.stringify(own)
    if (asked === frame.marked) continue
    frame.marked = asked
    ask(number, own)
  }
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
