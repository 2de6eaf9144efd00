import { createContext } from 'preact'
import type { Building, Device, Job, Test, TypedSheet } from '../../job/schema.ts'
import type { Settings } from '../../book/schema.ts'
import type { CheckLine } from '../../results/shown.ts'

/** How the view is folded. */
export interface View {
  isOpen: (section: string) => boolean
  setOpen: (section: string, open: boolean) => void
}

/** What every part of the calculator works on, and how it changes it. */
export interface Desk {
  job: Job
  settings: Settings
  devices: readonly Device[]
  editJob: (change: (job: Job) => Job) => void
  editBuilding: (patch: Partial<Building>) => void
  /** Offers to take back what was just deleted. */
  offerUndo: (text: string, undo: () => void) => void
}

/** The test that is open. */
export interface Bench {
  test: Test
  editTest: (patch: Partial<Test>) => void
  editSheet: (patch: Partial<TypedSheet> | ((now: TypedSheet) => Partial<TypedSheet>)) => void
  /** What was found about typed cells, in words, by path: only what is typed and wrong, or asked for. */
  found: ReadonlyMap<string, string>
  checks: readonly CheckLine[]
}

const outside = (): never => {
  throw new Error('This part of the calculator needs the calculator around it.')
}

export const ViewContext = createContext<View>({ isOpen: outside, setOpen: outside })
export const DeskContext = createContext<Desk | undefined>(undefined)
export const BenchContext = createContext<Bench | undefined>(undefined)
