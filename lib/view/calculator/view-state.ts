/** How the view was left: scroll and open sections. Kept apart from the book, and read before the first paint. */

export interface ViewState {
  scroll: number
  open: Record<string, boolean>
}

const key = 'gapsum-view'
const fresh: ViewState = {
  scroll: 0,
  open: { readings: true, figures: true },
}

export function readViewState(box: Pick<Storage, 'getItem'>): ViewState {
  try {
    const kept: unknown = JSON.parse(box.getItem(key) ?? 'null')
    if (typeof kept !== 'object' || kept === null) return fresh
    const { scroll, open } = kept as Partial<ViewState>
    return {
      scroll: typeof scroll === 'number' && Number.isFinite(scroll) ? scroll : 0,
      open: typeof open === 'object' && open !== null ? { ...fresh.open, ...open } : fresh.open,
    }
  } catch {
    // Storage that is blocked or damaged costs only the scroll position.
    return fresh
  }
}

export function writeViewState(box: Pick<Storage, 'setItem'>, state: ViewState): void {
  try {
    box.setItem(key, JSON.stringify(state))
  } catch {
    // As above: nothing that was typed is in here.
  }
}
