import type { FormMap } from '../../form/schema.ts'
import { sourceWords } from './source-words.ts'
import { dayAndYear } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** A form map of a file before it is accepted: where it types, and what. */
export function MapContents({ map }: { map: FormMap }) {
  const addresses = [map.address, ...(map.further ?? [])]
  return (
    <details class="sec">
      <summary>
        <h4>{map.name}</h4>
        <span class="q">
          {say`fills `}
          {addresses.map(({ origin, path }) => origin + path).join(', ')}
          {say`; made ${dayAndYear(map.created)}`}
        </span>
      </summary>
      <p>{say`Accept it only if you know this address and every line below.`}</p>
      <ol class="bindings">
        {map.bindings.map(({ id, control, source }) => (
          <li key={id}>
            <div class="line">
              <span>
                {control.name} <span class="q">{control.section}</span>
              </span>
              <span class="src">{sourceWords(source, new Map())}</span>
            </div>
          </li>
        ))}
      </ol>
    </details>
  )
}
