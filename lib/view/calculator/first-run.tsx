import { useEffect, useState } from 'preact/hooks'
import { listJobs } from '../../book/store.ts'
import { Icon } from '../icons.tsx'
import { Cautions } from './cautions.tsx'

interface Props {
  /** False once a job was begun before: then the cautions are not in the way. */
  first: boolean
  onStart: () => void
  onDemo: () => void
  onList: () => void
}

/** What stands here while no job is open. */
export function FirstRun({ first, onStart, onDemo, onList }: Props) {
  const [any, setAny] = useState(false)
  useEffect(() => {
    void listJobs().then((jobs) => setAny(jobs.length > 0))
  }, [])
  return (
    <main class="first">
      <h1>
        <Icon name="mark" /> {first ? 'Before the first test' : 'No job is open'}
      </h1>
      <p>
        Type readings of a house or duct test, get the figures with their uncertainty, and fill them into any web form
        that you map once. Everything stays on this machine.
      </p>
      {first && <h2>Cautions</h2>}
      {first && <Cautions />}
      <div class="row">
        <button type="button" class="b first" onClick={onStart}>
          Start a job
        </button>
        {any && (
          <button type="button" class="b" onClick={onList}>
            Open a job
          </button>
        )}
        <button type="button" class="b" onClick={onDemo}>
          Open the demo job
        </button>
      </div>
    </main>
  )
}
