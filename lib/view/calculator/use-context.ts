import { useContext } from 'preact/hooks'
import { BenchContext, DeskContext, type Bench, type Desk } from './context.ts'

const missing = (): never => {
  throw new Error('This part of the calculator needs the calculator around it.')
}

export const useDeskContext = (): Desk => useContext(DeskContext) ?? missing()
export const useBench = (): Bench => useContext(BenchContext) ?? missing()

/** What was found about a cell of the open test, by its path; nothing while no test is open. */
export function useFound(): (path: string) => string | undefined {
  const bench = useContext(BenchContext)
  return (path) => bench?.found.get(path)
}
