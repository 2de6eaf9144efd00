import { useState } from 'preact/hooks'
import { FigureTable } from '../figure/figure-table.tsx'
import type { FigureGroup } from '../../results/shown.ts'
import { ownFirst, type OwnFigure } from '../../results/own.ts'
import { say } from '../../words/say.ts'
import { later } from './later.tsx'

const Arrange = later(async () => (await import('./arrange.tsx')).Arrange)

const none: readonly OwnFigure[] = []

interface Props {
  groups: FigureGroup[]
  /** The figures that stand first. */
  own: readonly OwnFigure[] | undefined
  onOwn: (own: OwnFigure[]) => void
}

/** The figures, the person's own ones first; these are chosen and put in order here. */
export function OwnFigures({ groups, own = none, onOwn }: Props) {
  const [arranging, setArranging] = useState(false)
  return (
    <>
      <FigureTable groups={ownFirst(groups, own)} />
      {arranging ? (
        <Arrange groups={groups} own={own} onOwn={onOwn} onClose={() => setArranging(false)} />
      ) : (
        <button type="button" class="link small" onClick={() => setArranging(true)}>
          {say`Pin and order figures`}
        </button>
      )}
    </>
  )
}
