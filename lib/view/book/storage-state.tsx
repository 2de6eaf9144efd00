import { askPersistence, persistence, storageUse, type Persistence } from '../../book/persist.ts'
import type { Live } from '../parts/use-live.ts'
import { bytes } from '../parts/wording.ts'
import { Said, useSaid } from './said.tsx'
import { say } from '../../words/say.ts'

const words: Record<Persistence, string> = {
  kept: say`The browser keeps the book until you remove it.`,
  'may be cleared': say`The browser may clear the book when the disk runs full. Ask it to keep the book, and export now and then.`,
  'not known': say`This browser does not say whether it keeps the book. Export the book now and then.`,
}

export interface Storage {
  kept: Persistence
  use: Awaited<ReturnType<typeof storageUse>>
}
export const readStorage = async (): Promise<Storage> => ({ kept: await persistence(), use: await storageUse() })

/** Whether the browser keeps the book, and how much it holds. */
export function StorageState({ state }: { state: Live<Storage> }) {
  const { said, tell, run } = useSaid()
  if (!state.value) return null
  const { kept, use } = state.value
  return (
    <section class="group">
      <h2>{say`Storage`}</h2>
      <p>
        {words[kept]}
        {use && say` It uses ${bytes(use.used)} of the ${bytes(use.allowed)} it may.`}
      </p>
      <p class="q">
        {say`Everything stays in this browser on this machine. Removing the extension, or clearing its data, removes the book: export it first.`}
      </p>
      {kept !== 'kept' && (
        <button
          type="button"
          class="b low"
          onClick={() =>
            run(async () => {
              const now = await askPersistence()
              tell(
                now === 'kept'
                  ? say`The browser keeps the book.`
                  : say`The browser did not agree. Export the book now and then.`,
              )
              state.reload()
            })
          }
        >
          {say`Ask the browser to keep it`}
        </button>
      )}
      <Said said={said} />
    </section>
  )
}
