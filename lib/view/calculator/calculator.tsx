import { useEffect, useRef, useState } from 'preact/hooks'
import { getDevice, saveDevice } from '../../book/devices.ts'
import { deleteJob, getJob, restoreJob, saveJob } from '../../book/jobs.ts'
import type { FormMap } from '../../form/schema.ts'
import type { Job, Test } from '../../job/schema.ts'
import { browser } from '../../browser.ts'
import { BenchContext, DeskContext, ViewContext, type Bench, type Desk } from './context.ts'
import { duplicateJob, editSheet, editTest, isBlank, neighbour } from '../../job/edits.ts'
import { Foot } from './foot.tsx'
import { Frame } from './frame.tsx'
import { bringTo } from './hold.ts'
import { JobBar, Kept } from './job-bar.tsx'
import { jobTitle } from '../../job/job-title.ts'
import { later } from './later.tsx'
import { followPage, type ActivePage } from '../../extension/page.ts'
import { openBeside } from '../../extension/open-beside.ts'
import { openPdfForm, openPractice } from '../../extension/practice.ts'
import { Readings } from './readings.tsx'
import { Results } from './results.tsx'
import { Setup } from './setup.tsx'
import { TestRow } from './test-row.tsx'
import { putBack, putInTrash, readTrash, takeFromTrash, type Deleted } from './trash.ts'
import { useTold } from '../parts/use-told.ts'
import { useDesk } from './use-desk.ts'
import { useReading } from './use-reading.ts'
import { useView } from './use-view.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

const BeforeReading = later(async () => (await import('./before-reading.tsx')).BeforeReading)
const FirstRun = later(async () => (await import('./first-run.tsx')).FirstRun)
const GivenBack = later(async () => (await import('../parts/given-back.tsx')).GivenBack)
const JobList = later(async () => (await import('./job-list.tsx')).JobList)
const JobPanel = later(async () => (await import('./job-panel.tsx')).JobPanel)
const LimitBeside = later(async () => (await import('./limit-field.tsx')).LimitBeside)
const NewTest = later(async () => (await import('./new-test.tsx')).NewTest)
const OwnFigures = later(async () => (await import('./own-figures.tsx')).OwnFigures)
const PlotSection = later(async () => (await import('./plot-section.tsx')).PlotSection)
const Together = later(async () => (await import('./together.tsx')).Together)
const ParagraphSection = later(async () => (await import('../paragraph/paragraph-section.tsx')).ParagraphSection)
const TestEditor = later(async () => (await import('./test-editor.tsx')).TestEditor)
const UndoBar = later(async () => (await import('./undo-bar.tsx')).UndoBar)

/** Where the readings of the open test are typed. */
const firstCell = () => document.querySelector<HTMLElement>('.rd [data-column="pressure"]')

type Panel = '' | 'job' | 'test' | 'new test' | 'list'

interface Props {
  /** Called once the helper has its task: a popup closes then, a sidebar stays. */
  onSent?: () => void
  /** Whether it stands beside the page already. */
  beside?: boolean
}

/** The calculator: a job, its tests, their readings and what they come to, and the page they go into. */
export function Calculator({ onSent, beside = false }: Props) {
  const held = useDesk()
  const told = useTold()
  const view = useView(held.ready)
  const [panel, setPanel] = useState<Panel>('')
  const [page, setPage] = useState<ActivePage>()
  const [sending, setSending] = useState('')
  const { job, devices, settings } = held
  const test = job?.tests.find(({ id }) => id === held.test)

  useEffect(() => {
    document.documentElement.dataset.theme = settings?.theme ?? 'system'
    if (settings?.theme === 'system' || !settings) delete document.documentElement.dataset.theme
  }, [settings?.theme])

  useEffect(() => {
    const leaving = new AbortController()
    followPage(setPage, beside, leaving.signal)
    return () => leaving.abort()
  }, [])

  const reading = useReading(job, test, devices)
  // Nothing was read in this house yet.
  const untouched = job?.tests.every(({ sheet }) => sheet.points.every(isBlank)) ?? false

  const open = (next: Job | undefined, id?: string) => {
    held.dropUndo()
    held.show(next, id)
    setPanel('')
    // What was scrolled was another job, or the first screen.
    if (next) bringTo(firstCell, 'top')
    else scrollTo(0, 0)
  }
  // A second press while the first is under way would begin a second job or test.
  const beginning = useRef<Promise<void>>(undefined)
  const alone = (work: () => Promise<void>): Promise<void> => {
    beginning.current ??= work().finally(() => {
      beginning.current = undefined
    })
    return beginning.current
  }
  const begin = (make: () => Job | Promise<Job>) => alone(async () => open(await saveJob(await make())))
  const start = () => void begin(async () => (await import('./first-job.ts')).firstJob())
  const nextHouse = () => void begin(async () => (await import('../../job/next-house.ts')).nextHouse(job!))
  const addTest = (added: Test) => {
    held.editJob((now) => ({ ...now, tests: [...now.tests, added] }))
    held.openTest(added.id)
    setPanel('')
    bringTo(firstCell, 'top')
  }
  const testLike = () =>
    void alone(async () => {
      if (!job || !test) return
      const { nextSystem, otherDirection } = await import('../../job/next-test.ts')
      addTest(test.sheet.subject === 'ducts' ? nextSystem(job, test) : otherDirection(test))
    })
  const demo = () =>
    begin(async () => {
      const { demoDevice, demoJob } = await import('../../job/demo.ts')
      const fresh = demoJob()
      const device = demoDevice()
      // What was changed in it since stays changed.
      if (!(await getDevice(device.id))) await saveDevice(device)
      await restoreJob(fresh.id)
      return (await getJob(fresh.id)) ?? fresh
    })

  const dropJob = async () => {
    if (!job) return
    await deleteJob(job.id)
    open(undefined)
    held.offerUndo(say`${jobTitle(job)} deleted.`, () => {
      void restoreJob(job.id).then(() => held.show(job, held.test))
    })
  }
  const restoreTest = ({ place, test: back }: Deleted) => {
    held.editJob((now) => putBack(now, back, place))
    held.openTest(back.id)
    takeFromTrash(localStorage, back.id)
    setPanel('')
  }
  const dropTest = (gone: Test) => {
    if (!job) return
    const place = job.tests.findIndex(({ id }) => id === gone.id)
    try {
      putInTrash(localStorage, { job: job.id, place, test: gone })
    } catch {
      // No room for it there: then it can be put back for as long as this window is open.
    }
    held.editJob((now) => ({ ...now, tests: now.tests.filter(({ id }) => id !== gone.id) }))
    held.openTest(neighbour(job.tests, gone.id))
    setPanel('')
    held.offerUndo(say`Test “${roleWords(gone.role)}” deleted.`, () => restoreTest({ job: job.id, place, test: gone }))
  }
  const send = async (type: 'plan' | 'map', map: FormMap | undefined) => {
    if (!job || !page) return
    setSending('')
    try {
      const { sendJob } = await import('../../extension/send-job.ts')
      await sendJob(type, page, { job, devices, map, beside })
      onSent?.()
    } catch (error) {
      setSending(error instanceof Error ? error.message : String(error))
    }
  }
  const practise = () => void openPractice().then(() => onSent?.())
  const openBook = (hash = '') =>
    void browser.tabs.create({ url: `${browser.runtime.getURL('/book.html')}${hash}` }).then(() => onSent?.())
  const openReport =
    job && test && (() => openBook(`#report?${new URLSearchParams({ job: job.id, test: test.id }).toString()}`))
  const stay = () => void openBeside(page?.window).then(onSent, (error: unknown) => setSending(String(error)))

  if (!held.ready || !settings) return held.trouble ? <p role="alert">{held.trouble}</p> : <Frame />

  const desk: Desk | undefined = job && {
    job,
    settings,
    devices,
    editJob: held.editJob,
    editBuilding: (patch) => held.editJob((now) => ({ ...now, building: { ...now.building, ...patch } })),
    offerUndo: held.offerUndo,
  }
  const bench: Bench | undefined = test &&
    reading && {
      test,
      found: reading.found,
      checks: reading.checks,
      editTest: (patch) => held.editJob((now) => editTest(now, test.id, (one) => ({ ...one, ...patch }))),
      editSheet: (patch) => held.editJob((now) => editSheet(now, test.id, patch)),
    }
  /** Opens a section and brings a part of it into view, once what is read later has arrived. */
  const unfold = (section: string, part: string) => {
    view.setOpen(section, true)
    bringTo(() => document.querySelector<HTMLElement>(part))
  }
  const toggle = (which: Panel) => {
    setPanel(panel === which ? '' : which)
    if (which === 'job') scrollTo(0, 0)
  }

  return (
    <ViewContext.Provider value={view}>
      <DeskContext.Provider value={desk}>
        <BenchContext.Provider value={bench}>
          <div class="calc">
            {job && (
              <header class="bar-top">
                <JobBar
                  name={jobTitle(job)}
                  number={job.building.program}
                  kept={held.kept}
                  open={panel === 'job'}
                  onToggle={() => toggle('job')}
                  {...(!untouched && { onNext: nextHouse })}
                  {...(!beside && { onBeside: stay })}
                />
                <TestRow
                  job={job}
                  open={held.test}
                  editing={panel === 'test'}
                  adding={panel === 'new test'}
                  onOpen={(id) => {
                    held.openTest(id)
                    setPanel('')
                  }}
                  onEdit={() => toggle('test')}
                  onAdd={() => toggle('new test')}
                  onLike={testLike}
                >
                  {job.building.program === '' && <Kept at={held.kept} />}
                </TestRow>
                {panel === 'test' && bench && (
                  <TestEditor onDelete={() => dropTest(bench.test)} onClose={() => setPanel('')} />
                )}
                {(panel === 'new test' || !test) && (
                  <NewTest job={job} onClose={test && (() => setPanel(''))} onAdd={addTest} />
                )}
              </header>
            )}
            {job && desk ? (
              <main>
                {panel === 'job' && (
                  <JobPanel
                    deleted={readTrash(localStorage).filter((one) => one.job === job.id)}
                    onPutBack={restoreTest}
                    onOpen={(next) => open(next)}
                    onNew={start}
                    onNext={nextHouse}
                    onDuplicate={() => void begin(() => duplicateJob(job))}
                    onDelete={() => void dropJob()}
                    onDemo={() => void demo()}
                  />
                )}
                {reading && bench && (
                  <>
                    <Setup />
                    <Readings
                      key={bench.test.id}
                      brought={reading.brought}
                      used={reading.used}
                      mean={reading.mean}
                      unfinished={reading.unfinished}
                    />
                    <Results
                      reading={reading}
                      care={untouched && <BeforeReading ducts={bench.test.sheet.subject === 'ducts'} />}
                      drawFigures={(groups) => (
                        <OwnFigures groups={groups} own={settings.figures} onOwn={(figures) => held.set({ figures })} />
                      )}
                      limit={<LimitBeside judged={reading.verdict?.verdict !== undefined} />}
                      onLimit={() => unfold('setup', '#limit')}
                      onBuilding={() => {
                        setPanel('job')
                        unfold('building', '#building input[inputmode], #building .in:not(.words)')
                      }}
                    />
                    {reading.fitted && <PlotSection key={bench.test.id} />}
                    {job.tests.length > 1 && <Together />}
                    {reading.verdict && (
                      <ParagraphSection verdict={reading.verdict} onParts={(paragraph) => held.set({ paragraph })} />
                    )}
                  </>
                )}
              </main>
            ) : (
              <>
                <FirstRun
                  first={!settings.onboarded}
                  units={settings.units}
                  onUnits={(units) => held.set({ units })}
                  onStart={start}
                  onDemo={demo}
                  onList={() => toggle('list')}
                  onPractice={() => {
                    void demo().then(practise)
                  }}
                  onBook={() => openBook()}
                />
                {panel === 'list' && (
                  <main>
                    <JobList current="" onOpen={(next) => open(next)} />
                  </main>
                )}
              </>
            )}
            <div class="low-bar">
              {told && <GivenBack told={told} />}
              {held.trouble && (
                <p class="finding trouble" role="alert">
                  {held.trouble}
                </p>
              )}
              {held.undo && (
                <UndoBar
                  text={held.undo.text}
                  onUndo={() => {
                    held.undo?.undo()
                    held.dropUndo()
                  }}
                  onDismiss={held.dropUndo}
                />
              )}
              {job && (
                <Foot
                  page={page}
                  beside={beside}
                  job={job.id}
                  doubtful={reading?.counts.doubtful ?? 0}
                  bad={reading?.counts.bad ?? 0}
                  trouble={sending}
                  onPractice={practise}
                  onPdf={() => void openPdfForm().then(() => onSent?.())}
                  onFill={(map) => void send('plan', map)}
                  onMap={(map) => void send('map', map)}
                  onBook={() => openBook()}
                  onReport={openReport}
                  onChecks={() => {
                    unfold('checks', '#checks > summary')
                  }}
                />
              )}
            </div>
          </div>
        </BenchContext.Provider>
      </DeskContext.Provider>
    </ViewContext.Provider>
  )
}
