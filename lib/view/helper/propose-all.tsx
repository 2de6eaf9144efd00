import { useMemo, useState } from 'preact/hooks'
import { cluesOf } from '../../form/clues.ts'
import type { Material } from '../../form/material.ts'
import type { Binding } from '../../form/schema.ts'
import { titleOf } from './describe.ts'
import { newId } from './new-id.ts'
import { clearProposals } from './proposals.ts'
import type { PageControl } from './use-controls.ts'

interface ProposeAllProps {
  controls: readonly PageControl[]
  material: Material
  onBind: (bindings: (Binding & { key: string })[]) => void
  onPoint: (key: string | undefined) => void
  onBack: () => void
}

/** The proposals that leave no doubt, for all controls not bound yet, confirmed together. */
export function ProposeAll({ controls, material, onBind, onPoint, onBack }: ProposeAllProps) {
  const proposals = useMemo(() => clearProposals(controls, material), [controls, material])
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const taken = proposals.filter(({ key }) => !left.has(key))
  const open = controls.filter(({ binding }) => !binding).length

  return (
    <>
      <p class="asking">
        <button type="button" class="b bare low" onClick={onBack}>
          All controls
        </button>
      </p>
      <h2>Clear proposals</h2>
      <p class="q small">
        {proposals.length} of the {open} controls not bound yet have one figure or field that clearly fits. Take out
        what is not right. The rest is asked one by one.
      </p>
      {proposals.length > 0 && (
        <ul class="list">
          {proposals.map(({ key, control, row, reason }) => (
            <li key={key}>
              <label class="row" onPointerEnter={() => onPoint(key)} onPointerLeave={() => onPoint(undefined)}>
                <input
                  type="checkbox"
                  checked={!left.has(key)}
                  onChange={(event) => {
                    const next = new Set(left)
                    if (event.currentTarget.checked) next.delete(key)
                    else next.add(key)
                    setLeft(next)
                  }}
                />
                <span>
                  {control.section && <small class="q">{control.section}</small>}
                  {titleOf(control)}
                  <small class="q">{reason}</small>
                </span>
                <span class="to">
                  {row.group}: {row.label}
                  <small class="q">{row.value}</small>
                </span>
              </label>
            </li>
          ))}
        </ul>
      )}
      <div class="adds">
        <button
          type="button"
          class="b first"
          disabled={taken.length === 0}
          onClick={() =>
            onBind(
              taken.map(({ key, control, row, write }) => ({
                id: newId(),
                key,
                control: cluesOf(control),
                source: { from: 'item', item: row.id, write },
              })),
            )
          }
        >
          Bind {taken.length === 1 ? 'this one' : `these ${taken.length}`}
        </button>
      </div>
    </>
  )
}
