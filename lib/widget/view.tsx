import { useState } from 'preact/hooks'
import type { Device, Job, TypedPoint, TypedSheet } from '../job/schema.ts'
import { Cautions } from '../view/calculator/cautions.tsx'
import { Choice } from '../view/calculator/choice.tsx'
import { ViewContext, type View } from '../view/calculator/context.ts'
import { insertPoint, isBlank } from '../job/edits.ts'
import { LimitChoice } from '../view/calculator/limit-choice.tsx'
import { readingsSummary, ReadingsTable } from '../view/calculator/readings-table.tsx'
import { Results } from '../view/calculator/results.tsx'
import { Section } from '../view/calculator/section.tsx'
import { flowBasisWords, setupSummary } from '../view/calculator/setup-summary.ts'
import { SheetFields, type Offer } from '../view/calculator/sheet-fields.tsx'
import { SizeFields } from '../view/calculator/size-fields.tsx'
import { UndoBar } from '../view/calculator/undo-bar.tsx'
import { volumeWords } from '../results/unit-words.ts'
import type { Computed } from './compute.ts'
import { sizeCells, testOf } from './typed.ts'
import type { Options } from './types.ts'
import { say } from '../words/say.ts'

interface Props {
  job: Job
  computed: Computed
  options: Options
  devices: readonly Device[]
  disabled: boolean
  view: View
  onEdit: (change: (job: Job) => Job) => void
}

/** The inputs that the folded set-up holds. */
const setupCells = [
  'subject',
  'procedure',
  'direction',
  'date',
  'stage',
  'wind',
  'indoor',
  'outdoor',
  'barometer',
  'corrections',
  'limit',
  'onePointFactor',
  'device',
  'flowBasis',
  'exponent',
  'exponentUncertainty',
  'pressurePercent',
  'pressureFloor',
  'flowPercent',
  'baselineSeconds',
  'readingSeconds',
  'pressureScatter',
  'line',
  'instrumentFigure',
]

/** Which inputs the page leaves to the visitor. What it has decided, and a choice of one, is no input. */
export function offerOf(options: Options, devices: readonly Device[]): Offer {
  const omitted = new Set<string>(options.omit)
  for (const key of ['subject', 'procedure', 'direction', 'limit'] as const) if (options[key] !== '') omitted.add(key)
  if (devices.length === 0) omitted.add('device').add('reading')
  const fixed = new Set([...options.fixed, ...Object.keys(options.sources)])
  return { shows: (field) => !omitted.has(field), fixed: (field) => fixed.has(field) }
}

/** The calculator for a page: one test of one building. */
export function WidgetView({ job, computed, options, devices, disabled, view, onEdit }: Props) {
  const [gone, setGone] = useState<{ row: number; point: TypedPoint }>()
  const { reading } = computed
  const { building, units } = job
  const test = testOf(job)
  const { sheet } = test
  const offer = offerOf(options, devices)
  const found = (path: string) => reading.found.get(path)
  const onTest = (patch: object) => onEdit((now) => ({ ...now, tests: now.tests.map((one) => ({ ...one, ...patch })) }))
  const onSheet = (change: Partial<TypedSheet> | ((now: TypedSheet) => Partial<TypedSheet>)) =>
    onEdit((now) => {
      const before = testOf(now).sheet
      const patch = typeof change === 'function' ? change(before) : change
      return { ...now, tests: [{ ...testOf(now), sheet: { ...before, ...patch } }] }
    })
  const onPoints = (change: (points: TypedPoint[]) => TypedPoint[]) =>
    onSheet((now) => ({ points: change(now.points) }))
  const onBuilding = (patch: object) => onEdit((now) => ({ ...now, building: { ...now.building, ...patch } }))
  const device = devices.find(({ id }) => id === sheet.device)
  const volume = building.volume.trim()
  const offers = (fields: readonly string[]) => fields.some((field) => offer.shows(field))
  const end = sheet.reading === 'flow' ? flowBasisWords[sheet.flowBasis] : say`at the device`

  return (
    <ViewContext.Provider value={view}>
      <fieldset disabled={disabled} class="calc" part="calculator">
        <slot name="heading" dir="auto" />
        {offers(setupCells) && (
          <div part="setup">
            <Section id="setup" title={say`Set-up`} plain summary={setupSummary(test)}>
              <div class="fields">
                <SheetFields
                  test={test}
                  elevation={building.elevation}
                  length={units.length}
                  found={found}
                  offer={{ ...offer, shows: (field) => field !== 'elevation' && offer.shows(field) }}
                  onTest={onTest}
                  onSheet={onSheet}
                  onBuilding={onBuilding}
                  limit={
                    <LimitChoice
                      listId="limit"
                      job={job}
                      test={test}
                      found={found}
                      offer={offer}
                      offers={(id) => options.limits.length === 0 || options.limits.includes(id)}
                      onTest={onTest}
                    />
                  }
                  device={
                    offer.shows('device') && (
                      <Choice
                        label={say`Flow device`}
                        wide
                        fixed={offer.fixed('device')}
                        value={sheet.device}
                        options={[
                          ['', say`no device`],
                          ...devices.map(({ id, name }): [string, string] => [id, name || id]),
                        ]}
                        problem={found('device')}
                        onPick={(picked) => onSheet({ device: picked })}
                      />
                    )
                  }
                />
              </div>
            </Section>
          </div>
        )}
        {offers(sizeCells) && (
          <div part="building">
            <Section id="building" title={say`Building`} summary={volume && `${volume} ${volumeWords[units.length]}`}>
              <div class="fields">
                <SizeFields
                  building={building}
                  length={units.length}
                  found={found}
                  offer={offer}
                  onBuilding={onBuilding}
                />
              </div>
            </Section>
          </div>
        )}
        {offer.shows('points') && (
          <div part="readings">
            <Section
              id="readings"
              title={say`Readings`}
              summary={readingsSummary(sheet.points.filter((point) => !isBlank(point)).length, reading.mean)}
              end={end}
            >
              <ReadingsTable
                sheet={sheet}
                units={units}
                ranges={[...new Set(device?.ranges.map(({ name }) => name).filter(Boolean))]}
                brought={reading.brought}
                used={reading.used}
                mean={reading.mean}
                found={found}
                unfinished={reading.unfinished}
                fixed={{ points: offer.fixed('points'), baseline: offer.fixed('baselineBefore') }}
                onPoints={onPoints}
                onBaseline={onSheet}
                onDeleted={(row, point) => setGone({ row, point })}
              />
            </Section>
            {gone && (
              <UndoBar
                text={say`Point ${gone.row + 1} deleted.`}
                onUndo={() => {
                  onPoints((points) => insertPoint(points, gone.row, gone.point))
                  setGone(undefined)
                }}
                onDismiss={() => setGone(undefined)}
              />
            )}
          </div>
        )}
        <div part="results">
          <Results reading={reading} />
        </div>
        <details part="cautions" class="care">
          <summary class="link">{say`Cautions before a test`}</summary>
          <Cautions />
        </details>
      </fieldset>
    </ViewContext.Provider>
  )
}
