import { saveMap } from '../../book/maps.ts'
import type { FormMap } from '../../form/schema.ts'
import type { KnownItems } from './known-items.ts'
import { Said, useSaid } from './said.tsx'
import { sourceWords, sourceWrite } from './source-words.ts'
import { say } from '../../words/say.ts'

/** A form map from the office: to look at and to copy, not to change. */
export function OfficeMap({ map, items }: { map: FormMap; items: KnownItems }) {
  const { said, tell, run } = useSaid()
  const copy = () =>
    run(
      () => saveMap({ ...map, name: say`${map.name}, own copy` }),
      () => tell(say`The copy stands in this list under its own name.`),
    )
  return (
    <div class="body">
      <p class="q">{say`Your office looks after this form map. To change it, make a copy of your own.`}</p>
      <ol class="bindings" aria-label={say`Bindings of ${map.name}`}>
        {map.bindings.map(({ id, control, source }) => (
          <li key={id}>
            <div class="line">
              <span>
                {control.name} <span class="q">{control.section}</span>
              </span>
              <span class="src">{sourceWords(source, items)}</span>
              <span class="q how">{sourceWrite(source)}</span>
            </div>
          </li>
        ))}
      </ol>
      <div class="acts">
        <button type="button" class="b low" onClick={copy}>
          {say`Copy to my own`}
        </button>
      </div>
      <Said said={said} />
    </div>
  )
}
