import { pdfForms } from '../../form/map/address.ts'
import type { Address, FormMap } from '../../form/schema.ts'
import { Icon } from '../parts/icons.tsx'
import { say } from '../../words/say.ts'

interface MapAddressProps {
  map: FormMap
  onRename: (name: string) => void
  onAddress: (address: Address) => void
}

/** The map's name and the pages it is for. A star stands for a part of the address that changes from job to job. */
export function MapAddress({ map, onRename, onAddress }: MapAddressProps) {
  return (
    <details>
      <summary>
        <Icon name="tw" /> {say`Form map`} <span class="q">{map.name}</span>
      </summary>
      <div class="address">
        <label>
          <span class="lab">{say`Name of this form map`}</span>
          <input
            class="box"
            value={map.name}
            onChange={(event) => onRename(event.currentTarget.value.trim() || map.name)}
          />
        </label>
        {map.address.origin === pdfForms ? (
          <p class="q small">
            {say`Used on every copy of this PDF form, whatever the file is called: its id is ${map.address.path.slice(1)}.`}
          </p>
        ) : (
          <label>
            <span class="lab">{say`Used on pages of ${map.address.origin} whose address is`}</span>
            <input
              class="box mono"
              spellcheck={false}
              value={map.address.path}
              onChange={(event) => {
                const path = event.currentTarget.value.trim()
                onAddress({ ...map.address, path: path.startsWith('/') ? path : `/${path}` })
              }}
            />
          </label>
        )}
        {map.address.origin !== pdfForms && (
          <p class="q small">{say`* stands for one part that changes, a last ** for any rest.`}</p>
        )}
      </div>
    </details>
  )
}
