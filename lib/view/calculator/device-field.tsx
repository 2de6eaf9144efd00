import { useState } from 'preact/hooks'
import { emptyDevice } from '../../job/empty.ts'
import type { Device } from '../../job/schema.ts'
import { Choice } from './choice.tsx'
import { Finding } from './finding.tsx'
import { later } from './later.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'
import { say } from '../../words/say.ts'

const DeviceEditor = later(async () => (await import('./device-editor.tsx')).DeviceEditor)

/** Which device of the owner's was used; opens the editor to add one or to look at its ranges. */
export function DeviceField() {
  const { devices } = useDeskContext()
  const { test, editSheet, found: all } = useBench()
  const found = useFound()
  const inside = [...all].filter(([path]) => path.startsWith('device.'))
  const [draft, setDraft] = useState<Device>()
  const chosen = devices.find(({ id }) => id === test.sheet.device)
  const options: [string, string][] = [
    ['', say`no device`],
    ...devices.map(({ id, name, serial }): [string, string] => [
      id,
      [name || say`no name`, serial].filter(Boolean).join(', '),
    ]),
  ]
  if (test.sheet.device && !chosen) options.push([test.sheet.device, say`deleted device`])
  return (
    <>
      <Choice
        label={say`Flow device`}
        wide
        value={test.sheet.device}
        options={options}
        problem={found('device')}
        onPick={(device) => editSheet({ device })}
      />
      {draft ? (
        <DeviceEditor
          device={draft}
          onClose={(saved) => {
            if (saved) editSheet({ device: saved.id })
            setDraft(undefined)
          }}
        />
      ) : (
        <div class="wide">
          {inside.map(([path, text]) => (
            <Finding key={path} id={`found-${path}`} text={text} />
          ))}
          {chosen && (
            <button type="button" class="link" onClick={() => setDraft(chosen)}>
              {say`Edit ${chosen.name || say`this device`}`}
            </button>
          )}{' '}
          <button type="button" class="link" onClick={() => setDraft(emptyDevice(test.units.flow))}>
            {say`Add a device`}
          </button>
        </div>
      )}
    </>
  )
}
