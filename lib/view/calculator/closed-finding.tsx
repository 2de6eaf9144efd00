import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import { say } from '../../words/say.ts'
import { Icon } from '../icons.tsx'
import { BenchContext, ViewContext } from './context.ts'

/**
 * What a closed section says in place of its summary while a cell inside is wrong: a finding stands beside its cell, which
 * nobody sees there. Nothing when it is open or all is well.
 * @param within whether the cell of a path stands in the section
 */
export function useClosedFinding(section: string, within: (path: string) => boolean): ComponentChildren {
  const open = useContext(ViewContext).isOpen(section)
  const found = useContext(BenchContext)?.found
  if (open || ![...(found?.keys() ?? [])].some(within)) return undefined
  return (
    <span class="finding">
      <Icon name="doubtful" /> {say`Something inside is to be corrected: open to see it.`}
    </span>
  )
}
