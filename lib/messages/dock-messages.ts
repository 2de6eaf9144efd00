/** What the dock, a page of the extension in a frame of its own, and the helper's script in the page say to each other. */
import type { Image, FarMark } from '../form/page/image.ts'
import type { Material } from '../form/material.ts'
import type { FormMap, PlanLine, ReceiptLine } from '../form/schema.ts'
import type { Steps } from '../form/map/steps.ts'

export type Side = 'left' | 'right'
export type Theme = 'system' | 'light' | 'dark' | 'contrast'

/** A control as the dock sees it: what a frame of another origin would say of it, with all its options. */
export interface PageImage extends Image {
  /** What stands before `control` in the dock: `input`, `select`. */
  element: string
  /** The boxes of a date as controls of their own. */
  parts?: PageImage[]
}

/** A control that is left out, in words. */
export interface LeftOutImage {
  key: string
  name: string
  reason: string
  detail: string
}

/** A control that fits an ambiguous binding, told from its like by where it stands. */
export interface CandidateImage {
  binding: string
  index: number
  label: string
}

/** The plan as the page is now. */
export interface PlanSeen {
  type: 'plan'
  /** Counts the plans that were shown: a press is for the one that the person sees. */
  number: number
  /** Counts the screens: a new one begins with the table, at its top. */
  view: number
  undo: boolean
  job: string
  lines: PlanLine[]
  /** Bindings that the person has left out. */
  left: string[]
  candidates: CandidateImage[]
  /** Bindings whose control is somewhere on the page. */
  placed: string[]
  steps?: Steps
  leftToYou: string[]
  /** How many controls of the page were looked at so far, while there are more to come; the other lines come later. */
  looking?: number
  /** The page has more controls than were looked at. */
  more: boolean
  /** Origins of frames that nobody may look into yet. */
  origins: string[]
  /** The book is being told of the fill. */
  noting: boolean
  problem: string
  /** The page has changed since the plan was shown. */
  changed: boolean
  /** The last press did not count: something lay over the dock. */
  covered: boolean
  /** The last press did not count: it was meant for a plan before this one. */
  outdated: boolean
}

export interface ReceiptSeen {
  type: 'receipt'
  view: number
  kind: 'fill' | 'undo'
  lines: ReceiptLine[]
  placed: string[]
  problem: string
  /** The book lacks some of the lines; `unheard` says why it did not take them when asked again. */
  lacks: boolean
  unheard: string
  entry?: number
  steps?: Steps
  /** The step that the page shows by now, when it is a later one. */
  further?: Steps
}

export type ToDock =
  | { type: 'open'; view: number; theme: Theme; side: Side }
  /** A page too narrow for a panel at its side has a sheet at its foot. */
  | { type: 'room'; sheet: boolean }
  | PlanSeen
  | { type: 'filling'; view: number; total: number }
  | { type: 'line'; line: ReceiptLine }
  | ReceiptSeen
  | { type: 'map'; view: number; material: Material; map?: FormMap; href: string; heading: string }
  /** `more`: the page has more controls than are listed. */
  | { type: 'page'; controls: PageImage[]; leftOut: LeftOutImage[]; more: boolean; origins: string[] }
  /** The person pressed a control on the page, or points at one. */
  | { type: 'picked'; key: string }
  | { type: 'hovered'; key: string }
  | { type: 'trouble'; words: string }

export type FromDock =
  /** How large the dock is and where it stands; heights in CSS pixels. */
  | { type: 'place'; height: number; wide: boolean; side: Side }
  | { type: 'close' }
  /** Something lies over the dock. */
  | { type: 'raise' }
  | { type: 'leave'; binding: string; leave: boolean }
  | { type: 'choose'; binding: string; candidate: number }
  /** Points at a binding, or at one of the controls that fit it; at nothing when empty. */
  | { type: 'point'; binding: string; candidate?: number }
  /** Scrolls to the control of a binding, or of a key. */
  | { type: 'bring'; to: string }
  /** The press on Fill. `seen`: whether the browser said that nothing lay over the dock; left out where it cannot say. */
  | { type: 'fill'; number: number; seen?: boolean }
  | { type: 'stop' }
  | { type: 'undo' }
  /** Has the book note what it lacks. */
  | { type: 'note' }
  | { type: 'again' }
  | { type: 'step' }
  | { type: 'to-map' }
  | { type: 'ask-frame'; origin: string }
  /** Outlines of controls by key, while mapping. */
  | { type: 'marks'; marks: FarMark[] }
  /** The form map as it is kept by now. */
  | { type: 'mapped'; map: FormMap }
  | { type: 'to-plan'; map: FormMap }
