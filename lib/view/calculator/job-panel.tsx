import type { Job } from '../../job/schema.ts'
import { BuildingFields } from './building-fields.tsx'
import { Keys } from './keys.tsx'
import { JobList } from './job-list.tsx'
import { Section } from './section.tsx'
import { TesterFields } from './tester-fields.tsx'
import type { Deleted } from './trash.ts'
import { useDeskContext } from './use-context.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

interface Props {
  /** Tests of this job that were deleted lately. */
  deleted: readonly Deleted[]
  onPutBack: (deleted: Deleted) => void
  onOpen: (job: Job) => void
  onNew: () => void
  onNext: () => void
  onDuplicate: () => void
  onDelete: () => void
  onDemo: () => void
}

/** The job in hand and the others. */
export function JobPanel({ deleted, onPutBack, onOpen, onNew, onNext, onDuplicate, onDelete, onDemo }: Props) {
  const { job } = useDeskContext()
  const { volume, floorArea } = job.building
  return (
    <div class="panel job-panel">
      <div class="row">
        <button type="button" class="b low" onClick={onNew}>
          {say`New job`}
        </button>
        <button type="button" class="b low" onClick={onNext}>
          {say`Next house, same set-up`}
        </button>
        <button type="button" class="b low" onClick={onDuplicate}>
          {say`Duplicate`}
        </button>
        <button type="button" class="b low bare" onClick={onDelete}>
          {say`Delete this job`}
        </button>
        <button type="button" class="b low bare" onClick={onDemo}>
          {say`Demo job`}
        </button>
      </div>
      {deleted.length > 0 && (
        <p class="q">
          {say`Deleted here:`}{' '}
          {deleted.map((one) => (
            <button key={one.test.id} type="button" class="link" onClick={() => onPutBack(one)}>
              {say`put back “${roleWords(one.test.role)}”`}
            </button>
          ))}
        </p>
      )}
      <Section
        id="building"
        title={say`Building`}
        summary={volume || floorArea ? '' : say`address, volume, areas`}
        holds={(path) => path.startsWith('building.')}
      >
        <BuildingFields />
      </Section>
      <Section id="tester" title={say`Tester`} summary={job.tester.name}>
        <TesterFields />
      </Section>
      <Section id="jobs" title={say`Jobs`}>
        <JobList current={job.id} onOpen={onOpen} />
      </Section>
      <Section id="keys" title={say`Keys`} summary={say`shortcuts`}>
        <Keys />
      </Section>
    </div>
  )
}
