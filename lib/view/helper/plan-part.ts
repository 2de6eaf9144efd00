/** From the plan to the receipt, and back again by an undo, which is planned and shown like any fill. */
import type { FromDock } from '../../messages/dock-messages.ts'
import { survey, type Control, type Survey } from '../../form/page/controls.ts'
import { surveyInSteps } from './survey-in-steps.ts'
import { markFrames, onFrames } from '../../form/page/far.ts'
import { movedTo, pick, plan as planOf, type Plan } from '../../form/fill/plan.ts'
import type { ReceiptLine } from '../../form/schema.ts'
import { undoPlan } from '../../form/fill/undo.ts'
import { watchFilled } from '../../form/fill/watch-filled.ts'
import { bringIntoView } from './bring-into-view.ts'
import { namesOf, placesOf } from './candidate-places.ts'
import { closedOrigins } from './closed-origins.ts'
import { keepMoved } from './keep-moved.ts'
import { forgetUnnoted, noteLate } from './late.ts'
import type { Mark } from './page-marks.ts'
import { planMarks, receiptMarks } from './plan-marks.ts'
import { runFill, type Filled } from './run-fill.ts'
import { samePlan } from './same-plan.ts'
import { send } from './send.ts'
import type { Part, Stage, Task } from './stage.ts'
import { watchSurvey } from './watch-survey.ts'

/** What can be entered, of what the person has not left out, is filled. */
const fillable = ({ lines }: Plan, left: ReadonlySet<string>) =>
  lines.some(({ binding, state }) => (state === 'to enter' || state === 'will replace') && !left.has(binding))

/** Counts the plans of all tasks: a press that was meant for one that is gone counts for none. */
let numbers = 0

export function planPart(task: Extract<Task, { type: 'plan' }>, stage: Stage): Part {
  const { material } = task
  const { signal, say, mark, focus } = stage
  /** With the person's answers to "is it one of these", which the book keeps at the press of Fill. */
  let { map } = task
  let keptMap = map
  const moved = new Set<string>()
  let choices: ReadonlyMap<string, number> = new Map()
  let left: ReadonlySet<string> = new Set()
  let pointed: Control | string | undefined
  let undoing: Filled | undefined
  let last: Filled | undefined
  /** The lines of the last fill as the page holds them by now, and what the book says of those. */
  let held: readonly ReceiptLine[] = []
  let [lacks, unheard] = [false, '']
  let watching = new AbortController()
  let running: { total: number; stop: AbortController; lines: Map<string, Filled['lines'][number]> } | undefined
  let view = stage.view()
  let more = false
  let [noting, changed, covered, outdated, problem] = [false, false, false, false, '']

  /** The plan as it is now, with the person's answers to "which of these". */
  const planned = (seen?: Survey): Plan => {
    let now = planOf(map, material, document, seen)
    for (const [binding, index] of choices) {
      const control = now.candidates.get(binding)?.[index]
      if (control) now = pick(now, binding, control, material)
    }
    return now
  }
  const compute = (seen?: Survey) => (undoing ? undoPlan(undoing.lines, undoing.plan) : planned(seen))
  /** What the page had when the plan was first shown whole. */
  let opening: Survey | undefined
  let looking: number | undefined
  let plan: Plan
  let number = 0

  const outline = () => {
    const marks: Mark[] = running ? [] : last ? receiptMarks(held, last.plan.targets) : planMarks(plan, left, pointed)
    mark(marks)
    markFrames(marks, (frame, own) => void send({ type: 'frame-marks', frame, pick: false, marks: own }))
  }

  const tellPlan = () => {
    // What was not found yet may still come.
    const lines = looking === undefined ? plan.lines : plan.lines.filter(({ state }) => state !== 'not found')
    const candidates = lines.flatMap(({ binding, state }) => {
      const controls = plan.candidates.get(binding) ?? []
      const places =
        state === 'ambiguous' ? placesOf(controls) : state === 'not found' && !undoing ? namesOf(controls) : []
      return places.map((one) => Object.assign(one, { binding }))
    })
    say({
      type: 'plan',
      number,
      view,
      undo: undoing !== undefined,
      job: material.job.name,
      lines,
      left: [...left],
      candidates,
      placed: plan.lines.map(({ binding }) => binding).filter((binding) => elementsOf(binding)),
      ...(plan.steps && { steps: plan.steps }),
      leftToYou: plan.leftToYou,
      ...(looking !== undefined && { looking }),
      more,
      origins: closedOrigins(),
      noting,
      problem,
      changed,
      covered,
      outdated,
    })
  }
  const elementsOf = (binding: string) => (plan.targets.get(binding) ?? plan.candidates.get(binding)?.[0])?.elements

  const tellReceipt = (filled: Filled) => {
    const step = filled.kind === 'fill' ? planned().steps : undefined
    const { steps } = filled.plan
    say({
      type: 'receipt',
      view,
      kind: filled.kind,
      lines: [...held],
      placed: filled.lines.map(({ binding }) => binding).filter((binding) => filled.plan.targets.has(binding)),
      problem: filled.problem,
      lacks,
      unheard,
      ...(filled.entry !== undefined && { entry: filled.entry }),
      ...(steps && { steps }),
      ...(step && step.at > (steps?.at ?? step.at) && { further: step }),
    })
  }

  const tell = () => {
    if (running) {
      say({ type: 'filling', view, total: running.total })
      for (const line of running.lines.values()) say({ type: 'line', line })
    } else if (last) tellReceipt(last)
    else tellPlan()
  }

  /** Has the book note lines that it lacks, or that the page has changed since. */
  const note = async (filled: Filled, lines: readonly ReceiptLine[]) => {
    const sent = await noteLate(filled.fill, lines)
    if (sent.ok && lines.length === filled.lines.length) forgetUnnoted()
    if (last !== filled) return
    lacks = !sent.ok
    unheard = sent.ok ? '' : sent.message
    if (!signal.aborted) tellReceipt(filled)
  }

  /** Shows what became of a fill, and goes on looking whether the page keeps it. */
  const receipt = (filled: Filled) => {
    last = filled
    held = filled.lines
    lacks = filled.unnoted
    unheard = ''
    watching = new AbortController()
    watchFilled(
      filled.plan,
      filled.lines,
      (line) => {
        held = held.map((each) => (each.binding === line.binding ? line : each))
        tellReceipt(filled)
        outline()
        void note(filled, [line])
      },
      AbortSignal.any([watching.signal, signal]),
    )
  }

  /** Shows the plan as it is by now; a page that changed it is named, the person's own choice is not. */
  const look = (own: boolean, seen?: Survey) => {
    const now = compute(seen)
    if (samePlan(plan, now)) return true
    plan = now
    number = ++numbers
    if (!own) changed = true
    return false
  }

  /** Begins a screen of its own with the plan. */
  const restart = () => {
    watching.abort()
    last = undefined
    left = new Set()
    pointed = undefined
    problem = ''
    changed = covered = outdated = false
    view = stage.view()
    plan = compute()
    number = ++numbers
    tellPlan()
    outline()
    focus()
  }

  const fill = async (pressed: Extract<FromDock, { type: 'fill' }>) => {
    // A second press before the book has answered the first.
    if (running || noting || last || looking !== undefined) return
    outdated = pressed.number !== number
    if (outdated) return tellPlan()
    // Where the browser does not say whether the dock is seen, it is looked for from here.
    covered = pressed.seen === false || stage.covered(pressed.seen === undefined ? survey(document).roots : [])
    if (covered) {
      stage.raise()
      return tellPlan()
    }
    if (!look(false) || !fillable(plan, left)) {
      tellPlan()
      return outline()
    }
    const chosen = new Set(plan.lines.map(({ binding }) => binding).filter((binding) => !left.has(binding)))
    const stop = new AbortController()
    noting = true
    problem = ''
    stage.setBusy(true)
    tellPlan()
    try {
      const answered = new Set([...moved].filter((id) => chosen.has(id)))
      const kept = await keepMoved(keptMap, map, answered)
      if (kept.map) {
        keptMap = kept.map
        map = { ...map, id: keptMap.id, version: keptMap.version }
        for (const id of answered) moved.delete(id)
      }
      const filled = await runFill({
        material,
        map,
        plan,
        chosen,
        of: undoing?.id,
        closed: signal,
        stopped: stop.signal,
        onStart: (total) => {
          running = { total, stop, lines: new Map() }
          view = stage.view()
          tell()
          outline()
          focus()
        },
        onLine: (line) => {
          running?.lines.set(line.binding, line)
          say({ type: 'line', line })
        },
      })
      running = undefined
      if (typeof filled === 'string') problem = filled
      else {
        filled.problem ||= kept.problem
        receipt(filled)
        view = stage.view()
      }
    } finally {
      noting = false
      running = undefined
      stage.setBusy(false)
    }
    if (signal.aborted) return
    tell()
    outline()
    if (last) focus()
  }

  const watch = (whole: Survey) => {
    opening = whole
    watchSurvey(
      (seen) => {
        more = seen.more
        if (running || noting) return
        if (last) tellReceipt(last)
        else if (seen !== opening) {
          look(false, seen)
          tellPlan()
          outline()
        }
      },
      signal,
      stage.know,
      undefined,
      opening,
    )
  }
  // A plan of a page with thousands of controls is shown as far as it is known, and filled when all of it is.
  surveyInSteps(
    document,
    (seen, whole) => {
      const first = number === 0
      looking = whole ? undefined : seen.controls.length + seen.leftOut.length
      plan = compute(seen)
      number = ++numbers
      if (whole) watch(seen)
      if (first) return
      tellPlan()
      outline()
    },
    signal,
  )
  onFrames(() => {
    if (!running && !noting && !last) tellPlan()
  }, signal)
  outline()
  signal.addEventListener('abort', () =>
    markFrames([], (frame) => void send({ type: 'frame-marks', frame, pick: false, marks: [] })),
  )

  const hear = (message: FromDock) => {
    switch (message.type) {
      case 'fill':
        return void fill(message)
      case 'stop':
        return running?.stop.abort()
      case 'bring': {
        const elements = elementsOf(message.to)
        return elements && bringIntoView(elements)
      }
      case 'to-map':
        return noting || running ? undefined : stage.show({ type: 'map', material, map })
      case 'note':
        return last && void note(last, held)
      case 'again':
      case 'step':
      case 'undo':
        if (!last) return undefined
        undoing = message.type === 'undo' && last.kind === 'fill' ? last : undefined
        if (message.type === 'step') choices = new Map()
        return restart()
    }
    if (last || running || noting) return undefined
    if (message.type === 'point') {
      const { binding, candidate } = message
      pointed = candidate === undefined ? binding : plan.candidates.get(binding)?.[candidate]
      return outline()
    }
    if (message.type === 'leave') {
      const now = new Set(left)
      if (message.leave) now.add(message.binding)
      else now.delete(message.binding)
      left = now
    } else if (message.type === 'choose') {
      // Which of them is known when all of them are.
      if (looking !== undefined) return undefined
      const { binding, candidate } = message
      const nearest = plan.lines.some((line) => line.binding === binding && line.state === 'not found')
      const control = nearest ? plan.candidates.get(binding)?.[candidate] : undefined
      if (control) {
        map = movedTo(map, binding, control)
        moved.add(binding)
      } else choices = new Map(choices).set(binding, candidate)
      pointed = undefined
      look(true)
    } else return undefined
    tellPlan()
    return outline()
  }
  return { hear, tell }
}
