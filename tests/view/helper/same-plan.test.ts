import { describe, expect, it } from 'vitest'
import type { Control } from '../../../lib/form/page/controls.ts'
import type { Plan } from '../../../lib/form/fill/plan.ts'
import type { PlanLine } from '../../../lib/form/schema.ts'
import { samePlan } from '../../../lib/view/helper/same-plan.ts'

const element = { isConnected: true } as HTMLElement

function fakeLine(overrides: Partial<PlanLine> = {}): PlanLine {
  return {
    binding: 'a',
    control: 'CFM at 50 Pa',
    section: 'C2. After work',
    source: 'after: flow at 50 Pa',
    text: '754',
    now: '',
    state: 'to enter',
    note: '',
    ...overrides,
  }
}

function fakePlan(lines: PlanLine[], target: HTMLElement = element): Plan {
  const control = { element: target } as Control
  return {
    document: {} as Document,
    bindings: [],
    lines,
    targets: new Map(lines.map(({ binding }) => [binding, control])),
    candidates: new Map(),
    leftToYou: [],
  }
}

describe('whether a plan still is the one that was shown', () => {
  it('the same lines into the same controls are the same plan', () => {
    expect(samePlan(fakePlan([fakeLine()]), fakePlan([fakeLine()]))).toBe(true)
  })

  it.each([
    ['another text', { text: '755' }],
    ['another content to replace', { now: '99', state: 'will replace' as const }],
    ['another name of the control', { control: 'CFM at 25 Pa' }],
    ['another heading', { section: 'C1. Before work' }],
    ['another state', { state: 'not found' as const }],
  ])('%s is another plan', (_, change) => {
    expect(samePlan(fakePlan([fakeLine()]), fakePlan([fakeLine(change)]))).toBe(false)
  })

  it('the same line into another element is another plan', () => {
    expect(samePlan(fakePlan([fakeLine()]), fakePlan([fakeLine()], {} as HTMLElement))).toBe(false)
  })

  it('a line more or less is another plan', () => {
    const two = fakePlan([fakeLine(), fakeLine({ binding: 'b' })])
    expect(samePlan(fakePlan([fakeLine()]), two)).toBe(false)
    expect(samePlan(two, fakePlan([fakeLine()]))).toBe(false)
  })

  it('a note that reads differently changes nothing that is typed', () => {
    expect(samePlan(fakePlan([fakeLine()]), fakePlan([fakeLine({ note: '753.7 unrounded' })]))).toBe(true)
  })
})
