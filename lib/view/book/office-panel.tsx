import { fromOffice, type Office } from '../../book/office.ts'
import { listLimits } from '../../book/limits.ts'
import { listMaps } from '../../book/maps.ts'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { Trouble } from './field.tsx'
import { Said, useSaid } from './said.tsx'
import type { Live } from '../parts/use-live.ts'
import { count } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

const own = ({ id }: { id: string }) => !fromOffice(id)

async function* ownParts(): AsyncGenerator<string> {
  const [maps, limits] = await Promise.all([listMaps(), listLimits()])
  yield `${JSON.stringify({ maps: maps.filter(own), limits: limits.filter(own) }, null, 2)}\n`
}

/** What the office set in this browser, what of it could not be read, and how to set the same for others. */
export function OfficePanel({ policy: set }: { policy: Live<Office> }) {
  const { said, run } = useSaid()
  if (!set.value) return <Trouble text={set.trouble} />
  const { maps, limits, set: settings, problems } = set.value
  const names = [
    maps.length > 0 && count(maps.length, 'form map'),
    limits.length > 0 && count(limits.length, 'limit'),
    settings.company !== undefined && say`the company`,
    settings.units && say`the units of a new job`,
    settings.theme && say`the look`,
  ].filter((name) => name !== false && name !== undefined)
  return (
    <section class="group">
      <h2>{say`Your office`}</h2>
      <p>
        {names.length > 0
          ? say`Your office set for this browser: ${names.join(', ')}. It stays as it is there.`
          : say`No office has set anything for this browser.`}
      </p>
      {problems.map((problem) => (
        <Trouble key={problem} text={problem} />
      ))}
      <p class="q">
        {say`Whoever looks after the browsers of an office can set form maps, limits and these settings for all of them. The file below holds yours in the form that a browser’s policy takes.`}
      </p>
      <div class="acts">
        <button
          type="button"
          class="b low"
          onClick={() => run(() => download(fileName('policy', 'json'), jsonType, ownParts()))}
        >
          {say`Write form maps and limits for a policy`}
        </button>
      </div>
      <Said said={said} />
    </section>
  )
}
