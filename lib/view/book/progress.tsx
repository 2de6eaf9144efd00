import { say } from '../../words/say.ts'

/** How far something is, and a way to stop it; `words` are empty while nothing is under way. */
export function Progress({ words, onStop }: { words: string; onStop: () => void }) {
  return (
    <>
      <p role="status">{words}</p>
      {words && (
        <div class="acts">
          <button type="button" class="b low" onClick={onStop}>
            {say`Stop`}
          </button>
        </div>
      )}
    </>
  )
}
