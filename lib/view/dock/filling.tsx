import { useState } from 'preact/hooks'
import type { ReceiptLine } from '../../form/schema.ts'
import { Dock } from './dock.tsx'
import { ReceiptTable } from './receipt-table.tsx'
import { useShell } from './shell.ts'
import { Counts } from './status.tsx'
import { say } from '../../words/say.ts'

interface FillingProps {
  lines: readonly ReceiptLine[]
  total: number
}

/** A fill under way. */
export function Filling({ lines, total }: FillingProps) {
  const { tell } = useShell()
  const [stopped, setStopped] = useState(false)
  const onStop = () => {
    setStopped(true)
    tell({ type: 'stop' })
  }
  return (
    <Dock
      wide
      title={say`Filling`}
      closeLabel={say`Stop`}
      progress={total > 0 ? lines.length / total : 1}
      onClose={onStop}
      onEscape={onStop}
      footer={
        <button type="button" class="b" disabled={stopped} onClick={onStop}>
          {stopped ? say`Stopping…` : say`Stop`}
        </button>
      }
    >
      <p role="status" class="small">
        {say`${lines.length} of ${total} controls written and read back. Nothing is submitted.`}
      </p>
      <Counts of={lines.map(({ outcome }) => outcome)} />
      <ReceiptTable lines={lines} />
    </Dock>
  )
}
