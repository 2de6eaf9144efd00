import { useEffect } from 'preact/hooks'
import { farControl } from '../../form/far.ts'
import type { ToHelper } from '../../messages.ts'
import { keyOf } from './control-key.ts'

let heard: ((key: string) => void) | undefined

/** Takes the choice of a control in a frame of another origin, which the frame's own script has heard. */
export function takePick({ frame, key }: Extract<ToHelper, { type: 'picked' }>): void {
  const control = farControl(frame, key)
  if (control) heard?.(keyOf(control.element))
}

/** Picking controls in frames of other origins by pointer. */
export function useFarPick(onPick: (key: string) => void): void {
  useEffect(() => {
    heard = onPick
    return () => {
      heard = undefined
    }
  }, [onPick])
}
