import { useEffect, useState } from 'preact/hooks'
import { filledSoFar } from '../../book/series.ts'
import type { Binding, FormMap } from '../../form/schema.ts'
import { stepsOf } from '../../form/map/steps.ts'
import { say } from '../../words/say.ts'
import { PageIcon } from '../parts/page-icons.tsx'
import type { ActivePage } from '../../extension/page.ts'

/** `1 doubtful check`, `checks: 1 bad, 2 doubtful` */
function checksSaid(bad: number, doubtful: number): string {
  const [worse, less] = [say`${bad} bad`, say`${doubtful} doubtful`]
  if (bad > 0 && doubtful > 0) return say`checks: ${worse}, ${less}`
  const said = bad > 0 ? worse : less
  return bad + doubtful === 1 ? say`${said} check` : say`${said} checks`
}

interface Props {
  page: ActivePage | undefined
  /** Whether this stands beside the page, where the browser shows a page only after its toolbar button was pressed. */
  beside: boolean
  /** The job that is filled in. */
  job: string
  doubtful: number
  bad: number
  /** Why the last action did not work, or empty. */
  trouble: string
  onFill: (map: FormMap) => void
  onMap: (map: FormMap | undefined) => void
  onBook: () => void
  /** Opens the report of the open test. */
  /** Left out where the job has no test to report. */
  onReport: (() => void) | undefined
  /** Opens the form to practise on. */
  onPractice: () => void
  /** Opens the page for forms that are PDF files. */
  onPdf: () => void
  onChecks: () => void
}

const unseen = () => say`To work on this page, press the Gapsum button in the toolbar once while the page is shown.`

/** What to do with the figures, and what needs a look first. Stays on screen. */
export function Foot({
  page,
  beside,
  job,
  doubtful,
  bad,
  trouble,
  onFill,
  onMap,
  onBook,
  onReport,
  onPractice,
  onPdf,
  onChecks,
}: Props) {
  const [picked, setPicked] = useState('')
  const maps = page?.maps ?? []
  const map = maps.find((one) => one.id === picked) ?? (maps.length === 1 ? maps[0] : undefined)
  const near = maps.length === 0 ? (page?.near ?? []) : []
  const further = near.find((one) => one.id === picked)
  const count = map?.bindings.length ?? 0
  const left = useStepsLeft(job, map)
  const said = checksSaid(bad, doubtful)
  const able = page !== undefined && page.barred === ''

  return (
    <footer class="act">
      {maps.length > 1 && (
        <label class="which">
          {say`Several form maps fit this page. Which one?`}
          <select class="in" value={map?.id ?? ''} onChange={(event) => setPicked(event.currentTarget.value)}>
            <option value="">{say`choose a form map`}</option>
            {maps.map((one) => (
              <option key={one.id} value={one.id}>
                {say`${one.name}, ${one.bindings.length} bindings`}
              </option>
            ))}
          </select>
        </label>
      )}
      {near.length > 0 && (
        <label class="which">
          {say`This page is`}
          <select class="in" value={further?.id ?? ''} onChange={(event) => setPicked(event.currentTarget.value)}>
            <option value="">{say`a form of its own`}</option>
            {near.map((one) => (
              <option key={one.id} value={one.id}>
                {say`a further step of ${one.name}`}
              </option>
            ))}
          </select>
        </label>
      )}
      {trouble && (
        <p class="finding" role="alert">
          <PageIcon name="doubtful" /> {trouble}
        </p>
      )}
      <div class="row">
        <button type="button" class={map ? 'b first' : 'b'} disabled={!able || !map} onClick={() => map && onFill(map)}>
          {say`Fill this page`}
        </button>
        <button
          type="button"
          class={able && maps.length === 0 ? 'b first' : 'b'}
          disabled={!able}
          onClick={() => onMap(map ?? further)}
        >
          {say`Map this page`}
        </button>
        <button type="button" class="b" onClick={onBook}>
          {say`Open book`}
        </button>
      </div>
      <div class="pg">
        {map && (
          <>
            <b>{map.name}</b>
            <span>{left || (count === 1 ? say`1 binding` : say`${count} bindings`)}</span>
          </>
        )}
        {page && maps.length === 0 && (
          <span>{page.barred || (beside && page.url === '' ? unseen() : say`No form map for this page yet.`)}</span>
        )}
        {page?.barred && (
          <button type="button" class="link" onClick={onPractice}>
            {say`Open the practice form`}
          </button>
        )}
        {page && maps.length === 0 && (
          <button type="button" class="link" onClick={onPdf}>
            {say`Open a PDF form`}
          </button>
        )}
        {onReport && (
          <button type="button" class="link report" onClick={onReport}>
            {say`Report`}
          </button>
        )}
        {bad + doubtful > 0 && (
          <a
            class={bad > 0 ? 'st bad' : 'st doubt'}
            href="#checks"
            onClick={(event) => {
              event.preventDefault()
              onChecks()
            }}
          >
            <PageIcon name={bad > 0 ? 'bad' : 'doubtful'} />
            {said}
          </a>
        )}
      </div>
    </footer>
  )
}

/** How far the submission under way has come, in words; empty when the form has one step or nothing is filled yet. */
function useStepsLeft(job: string, map: FormMap | undefined): string {
  const [said, setSaid] = useState('')
  useEffect(() => {
    setSaid('')
    if (!map || job === '') return undefined
    let current = true
    const look = async () => {
      const done = await filledSoFar(job, map.id)
      if (current && done.size > 0) setSaid(stepWords(map.bindings, done))
    }
    // What is left is a help only: the plan looks for itself.
    look().catch(() => {})
    return () => {
      current = false
    }
  }, [job, map])
  return said
}

function stepWords(bindings: readonly Binding[], done: ReadonlySet<string>): string {
  const open = bindings.filter(({ id }) => !done.has(id))
  const order = stepsOf(bindings)
  const at = order.findIndex((step) => open.some((binding) => (binding.step ?? 1) === step)) + 1
  if (open.length === 0) return ''
  const of = say`${open.length} of ${bindings.length} left`
  return order.length > 1 ? say`step ${at} of ${order.length}: ${of}` : of
}
