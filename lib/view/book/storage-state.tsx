import { askPersistence, persistence, storageUse, type Persistence } from '../../book/persist.ts'
import { useLive } from './use-live.ts'
import { bytes } from './wording.ts'
import { Said, useSaid } from './said.tsx'

const words: Record<Persistence, string> = {
  kept: 'The browser keeps the book until you remove it.',
  'may be cleared':
    'The browser may clear the book when the disk runs full. Ask it to keep the book, and export now and then.',
  'not known': 'This browser does not say whether it keeps the book. Export the book now and then.',
}

/** Whether the browser keeps the book, and how much it holds. */
export function StorageState() {
  const state = useLive(async () => ({ kept: await persistence(), use: await storageUse() }), ['entries'])
  const { said, say, run } = useSaid()
  if (!state.value) return null
  const { kept, use } = state.value
  return (
    <section class="group">
      <h2>Storage</h2>
      <p>
        {words[kept]}
        {use && ` It uses ${bytes(use.used)} of the ${bytes(use.allowed)} it may.`}
      </p>
      <p class="q">
        Everything stays in this browser on this machine. Removing the extension, or clearing its data, removes the
        book: export it first.
      </p>
      {kept !== 'kept' && (
        <button
          type="button"
          class="b low"
          onClick={() =>
            run(async () => {
              const now = await askPersistence()
              say(
                now === 'kept'
                  ? 'The browser keeps the book.'
                  : 'The browser did not agree. Export the book now and then.',
              )
              state.reload()
            })
          }
        >
          Ask the browser to keep it
        </button>
      )}
      <Said said={said} />
    </section>
  )
}
