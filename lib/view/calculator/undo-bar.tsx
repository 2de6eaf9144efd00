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
        Undo
      </button>
      <button type="button" class="link" onClick={onDismiss}>
        Dismiss
      </button>
    </div>
  )
}
