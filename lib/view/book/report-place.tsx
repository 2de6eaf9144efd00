import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Trouble } from './field.tsx'
import type { Route } from './route.ts'
import { wording } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

type Section = ComponentType<{ route: Route }>

/** The report, whose code is fetched from the extension when one is asked for. */
export function ReportPlace({ route }: { route: Route }) {
  const [section, setSection] = useState<{ Section: Section }>()
  const [trouble, setTrouble] = useState('')
  useEffect(() => {
    import('./report-section.tsx').then(
      ({ ReportSection }) => setSection({ Section: ReportSection }),
      (error: unknown) => setTrouble(wording(error)),
    )
  }, [])
  if (trouble) return <Trouble text={trouble} />
  return section ? <section.Section route={route} /> : <p class="q">{say`opening the report`}</p>
}
