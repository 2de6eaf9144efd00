import { say } from '../../words/say.ts'

interface Props {
  text: string
  onUndo: () => void
  onDismiss: () => void
}

/** Says what was taken away and puts it back. */
export function UndoBar({ text, onUndo, onDismiss }: Props) {
  return (
    <div class="undo" role="status">
      <span>{text}</span>
      <button type="button" class="link" onClick={onUndo}>
        {say`Undo`}
      </button>
      <button type="button" class="link" onClick={onDismiss}>
        {say`Dismiss`}
      </button>
    </div>
  )
}
