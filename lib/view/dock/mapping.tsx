import { useCallback, useEffect, useMemo, useState } from 'preact/hooks'
import type { ToDock } from '../../messages/dock-messages.ts'
import type { FarMark } from '../../form/page/image.ts'
import type { Binding, Source } from '../../form/schema.ts'
import { spanning } from '../../form/map/address.ts'
import { atStep, stepFor } from '../../form/map/steps.ts'
import { textOf } from '../../form/fill/text.ts'
import { mostListed } from '../../bounds.ts'
import { ControlList } from './control-list.tsx'
import { boundTo } from './describe.ts'
import { Dock } from './dock.tsx'
import { Kept } from './kept.tsx'
import { Key } from './key.tsx'
import { LeftToYou } from './left-to-you.tsx'
import { MapAddress } from './map-address.tsx'
import { mappingMarks } from './mapping-marks.ts'
import { newFormMap } from './new-form-map.ts'
import { newId } from '../helper/new-id.ts'
import { NotHere } from './not-here.tsx'
import { itemRows, proposalsFor } from './proposals.ts'
import { OtherFrames } from './other-frames.tsx'
import { ProposeAll } from './propose-all.tsx'
import { MappingFoot } from './mapping-foot.tsx'
import { Question } from './question.tsx'
import { WhichTest } from './which-test.tsx'
import { useShell } from './shell.ts'
import { cluesOf } from './stand-ins.ts'
import { tooMany } from './too-many.ts'
import { useControls, type PageSeen } from './use-controls.ts'
import { useFormMap } from './use-form-map.ts'
import { useProposals } from './use-proposals.ts'
import { useSuggestions } from './use-suggestions.ts'
import { say } from '../../words/say.ts'

interface MappingProps {
  /** What the helper's script began with. */
  start: Extract<ToDock, { type: 'map' }>
  page: PageSeen
  /** Takes what is to be done when the person presses a control on the page, or points at one. */
  picks: { onPick?: (key: string) => void; onHover?: (key: string | undefined) => void }
}

/** Binds the controls of the page, one at a time or the clear ones together. */
export function Mapping({ start: { material, map: given, href, heading }, page: seen, picks }: MappingProps) {
  const { tell, close } = useShell()
  const [start] = useState(() => (given ? spanning(given, href) : newFormMap(href, heading)))
  const editor = useFormMap(start, given === undefined)
  const { map } = editor
  const page = useControls(map, seen)
  const [picked, setPicked] = useState<string>()
  const [draft, setDraft] = useState<Source>()
  const [lately, setLately] = useState<string>()
  const [pointed, setPointed] = useState<string>()
  const [moving, setMoving] = useState<Binding>()

  const suggestions = useSuggestions(page.controls, material)
  const together = useProposals(page.controls, material, suggestions)

  const items = useMemo(() => itemRows(material), [material])
  const at = page.controls.find(({ key }) => key === picked)
  const bound = at?.binding
  const proposals = useMemo(
    () => (at ? proposalsFor(at.control, material, page.controls, suggestions, together.test) : []),
    [at?.control, material, page.controls, suggestions, together.test],
  )
  // Only what is clear is chosen beforehand: "Bind, then next" in a row must not bind a guess.
  const clear = proposals.find((proposal) => proposal.clear)
  const source = draft ?? bound?.source ?? (clear && { from: 'item' as const, item: clear.id, write: clear.write })

  const go = useCallback(
    (key: string | undefined) => {
      setPicked(key)
      setLately((before) => key ?? picked ?? before)
      setDraft(undefined)
      if (key !== undefined) tell({ type: 'bring', to: key })
    },
    [tell, picked],
  )
  const choose = (key: string | undefined) => {
    const target = page.controls.find((control) => control.key === key)
    if (moving && target) {
      page.remember(moving.id, target.key)
      editor.bind([atStep({ ...moving, control: cluesOf(target.control) }, step())], page.inOrder)
      setMoving(undefined)
      setLately(key)
    } else go(key)
  }
  picks.onPick = choose
  picks.onHover = setPointed
  const marks = JSON.stringify(mappingMarks(page, picked, pointed))
  useEffect(() => tell({ type: 'marks', marks: JSON.parse(marks) as FarMark[] }), [tell, marks])
  // A frame that is loaded anew goes on with the map as it is by now.
  useEffect(() => void (map !== start && tell({ type: 'mapped', map })), [tell, map, start])

  const next = () => {
    const index = page.controls.findIndex(({ key }) => key === picked)
    const order = [...page.controls.slice(index + 1), ...page.controls.slice(0, Math.max(index, 0))]
    go(order.find(({ binding }) => !binding)?.key)
  }
  // A control of a later step stands on a page that shows nothing bound so far.
  const step = () => stepFor(map.bindings, new Set(page.controls.flatMap(({ binding }) => binding?.id ?? [])))
  const bind = () => {
    if (!at || !source) return
    const id = bound?.id ?? newId()
    page.remember(id, at.key)
    const binding = { id, control: cluesOf(at.control), source }
    editor.bind([atStep(binding, bound ? (bound.step ?? 1) : step())], page.inOrder)
    next()
  }

  const result = at && source ? textOf(source, material, cluesOf(at.control)) : undefined
  const preview = result && {
    text: 'text' in result ? result.text : '',
    note: 'text' in result ? (result.note ?? '') : result.refused,
    bad: 'refused' in result,
  }
  const done = page.controls.filter(({ binding }) => binding).length
  const bindAll = () => {
    const bindings = together.taken()
    for (const { id, key } of bindings) page.remember(id, key)
    editor.bind(
      bindings.map(({ id, control, source: from }) => atStep({ id, control, source: from }, step())),
      page.inOrder,
    )
    together.show(false)
  }
  const leave = () => {
    if (moving) setMoving(undefined)
    else if (picked) go(undefined)
    else if (together.open) together.show(false)
    else close()
  }

  return (
    <Dock
      title={say`Map this page`}
      closeLabel={say`Close, keep what is bound`}
      progress={page.controls.length > 0 ? done / page.controls.length : 0}
      onClose={close}
      onEscape={leave}
      footer={
        <MappingFoot
          asking={at !== undefined}
          bound={bound !== undefined}
          canBind={source !== undefined}
          proposals={together}
          canPlan={map.bindings.length > 0}
          onBind={bind}
          onNext={next}
          onRemove={() => bound && editor.remove(bound.id)}
          onBindAll={bindAll}
          onPlan={() => tell({ type: 'to-plan', map })}
          onClose={close}
        />
      }
    >
      <div class="asking">
        <span>{say`${done} of ${page.controls.length} controls bound`}</span>
        <Kept kept={editor.kept} />
      </div>
      {at ? (
        <Question
          key={at.key}
          control={at.control}
          number={page.controls.indexOf(at) + 1}
          material={material}
          rows={items}
          proposals={proposals}
          source={source}
          onSource={setDraft}
          preview={preview}
          twin={at.twin ? say`Another control of this page looks the same. The plan will ask which one is meant.` : ''}
          onBack={() => go(undefined)}
        />
      ) : together.open ? (
        <ProposeAll proposals={together} unbound={page.controls.length - done} onPoint={setPointed} />
      ) : (
        <>
          {moving && (
            <p class="note" role="status">
              {say`Pick the control for “${moving.control.name}”. What goes into it stays as it is.`}{' '}
              <button type="button" class="b low" onClick={() => setMoving(undefined)}>
                {say`Leave it`}
              </button>
            </p>
          )}
          <h2>{say`Pick a control`}</h2>
          <p class="q small">{say`Click one on the page, or choose it here. Clicking does not change the page.`}</p>
          {page.controls.length === 0 && (
            <p class="note">
              {say`No control that can be filled is on this page. Open the form first; it is looked for as the page changes.`}
            </p>
          )}
          {done < page.controls.length && (
            <button type="button" class="b low all" onClick={() => together.show(true)}>
              {say`Propose for all`}
            </button>
          )}
          {/* It comes when the suggestions do: below the button, which stays where a person is about to press it. */}
          <WhichTest of={together} />
          <ControlList
            rows={page.controls.map(({ key, control, binding, twin }) => ({
              key,
              control,
              bound: binding ? boundTo(binding.source, material) : '',
              twin,
            }))}
            lately={lately}
            onPick={choose}
            onPoint={setPointed}
          />
          {seen.more && <p class="note">{tooMany(mostListed)}</p>}
          <OtherFrames origins={seen.origins} />
          <NotHere bindings={page.missing} material={material} onRemove={editor.remove} onMove={setMoving} />
          <LeftToYou leftOut={page.leftOut} />
          <MapAddress map={map} onRename={editor.rename} onAddress={editor.readdress} />
        </>
      )}
      <Key />
    </Dock>
  )
}
