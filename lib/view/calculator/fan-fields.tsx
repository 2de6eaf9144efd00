import { useState } from 'preact/hooks'
import { emptyDevice } from '../../job/empty.ts'
import { fanName } from '../../job/fans.ts'
import { addFan, withoutFan } from '../../job/fans-edit.ts'
import type { Device, TypedFan } from '../../job/schema.ts'
import { sentence } from '../../reduce/errors.ts'
import { temperatureWords } from '../../results/unit-words.ts'
import { Choice } from './choice.tsx'
import { DeviceEditor } from './device-editor.tsx'
import { Field } from './field.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'
import { say } from '../../words/say.ts'

const readings = [
  ['flow', say`the flow it shows`],
  ['device', say`the pressure at the device`],
] as const

/** Several fans that run together: what each is, and what is typed of it for each point. */
export function FanFields() {
  const { devices, offerUndo } = useDeskContext()
  const { test, editSheet } = useBench()
  const found = useFound()
  const { sheet, units } = test
  const fans = sheet.fans ?? []
  const [draft, setDraft] = useState<{ device: Device; of: number }>()
  const edit = (at: number, patch: Partial<TypedFan>) =>
    editSheet(({ fans: now = [] }) => ({ fans: now.map((fan, one) => (one === at ? { ...fan, ...patch } : fan)) }))
  const remove = (at: number) => {
    const before = { fans: sheet.fans, points: sheet.points }
    editSheet((now) => withoutFan(now, at))
    offerUndo(say`${sentence(fanName(fans[at]!, at))} deleted.`, () => editSheet(before as Partial<typeof sheet>))
  }
  return (
    <div class="wide">
      {fans.map((fan, at) => {
        const name = sentence(fanName(fan, at))
        const chosen = devices.find(({ id }) => id === fan.device)
        const options: [string, string][] = [
          ['', say`no device`],
          ...devices.map((one): [string, string] => [
            one.id,
            [one.name || say`no name`, one.serial].filter(Boolean).join(', '),
          ]),
        ]
        if (fan.device && !chosen) options.push([fan.device, say`deleted device`])
        return (
          // Fans have no id of their own, and none is moved.
          // oxlint-disable-next-line react/no-array-index-key
          <div class="fields" key={at} role="group" aria-label={name}>
            <Field
              label={say`Name of fan ${at + 1}`}
              value={fan.name}
              hint={say`front door`}
              onInput={(typed) => edit(at, { name: typed })}
            />
            <Choice
              label={say`Typed for each point`}
              value={fan.reading}
              options={readings}
              onPick={(reading) => edit(at, { reading })}
            />
            <Choice
              label={say`Flow device`}
              wide
              value={fan.device}
              options={options}
              problem={found(`fans.${at}.device`)}
              onPick={(device) => edit(at, { device })}
            />
            {draft?.of === at ? (
              <DeviceEditor
                device={draft.device}
                onClose={(saved) => {
                  if (saved) edit(at, { device: saved.id })
                  setDraft(undefined)
                }}
              />
            ) : (
              <p class="wide">
                {chosen && (
                  <button type="button" class="link" onClick={() => setDraft({ device: chosen, of: at })}>
                    {say`Edit ${chosen.name || say`this device`}`}
                  </button>
                )}{' '}
                <button
                  type="button"
                  class="link"
                  onClick={() => setDraft({ device: emptyDevice(units.flow), of: at })}
                >
                  {say`Add a device`}
                </button>{' '}
                {fans.length > 1 && (
                  <button type="button" class="link" onClick={() => remove(at)}>
                    {say`Remove ${fanName(fan, at)}`}
                  </button>
                )}
              </p>
            )}
            <Field
              label={say`Uncertainty of flow`}
              numeric
              unit="%"
              hint={sheet.flowPercent.trim() || '5'}
              value={fan.flowPercent}
              problem={found(`fans.${at}.flowPercent`)}
              onInput={(flowPercent) => edit(at, { flowPercent })}
            />
            <Field
              label={say`Air in the fan, if another`}
              numeric
              unit={temperatureWords[units.temperature]}
              value={fan.temperature}
              problem={found(`fans.${at}.temperature`)}
              onInput={(temperature) => edit(at, { temperature })}
            />
          </div>
        )
      })}
      <button
        type="button"
        class="link"
        onClick={() => editSheet(({ fans: now = [] }) => ({ fans: addFan(now) }))}
      >{say`Add a fan`}</button>
    </div>
  )
}
