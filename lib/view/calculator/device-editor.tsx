import { useRef, useState } from 'preact/hooks'
import { saveDevice } from '../../book/devices.ts'
import { emptyRange } from '../../job/empty.ts'
import type { Device } from '../../job/schema.ts'
import { Choice } from './choice.tsx'
import { Field } from './field.tsx'
import { Finding } from './finding.tsx'
import { type DeviceRange, RangesTable } from './ranges-table.tsx'
import { useDeskContext } from './use-context.ts'
import { flowWords } from '../../results/unit-words.ts'
import { writesComma } from '../../units/comma.ts'
import { say } from '../../words/say.ts'

const flowUnits = Object.entries(flowWords) as [Device['flowUnit'], string][]
const columns: [keyof DeviceRange, string][] = [
  ['name', say`Range`],
  ['coefficient', 'K'],
  ['exponent', 'm'],
  ['minPressure', say`from Pa`],
  ['maxPressure', say`to Pa`],
]

/** Whether anything was typed of a device yet. */
const begun = ({ name, serial, calibrated, intervalMonths, calibrationDensity, ranges }: Device): boolean =>
  [
    name,
    serial,
    calibrated,
    intervalMonths,
    calibrationDensity,
    ...ranges.flatMap((range) => Object.values(range)),
  ].some((cell) => cell.trim() !== '')

/** A flow device with the ranges of its calibration certificate. Kept at each keystroke. */
export function DeviceEditor({ device, onClose }: { device: Device; onClose: (saved: Device | undefined) => void }) {
  const [draft, setDraft] = useState(device)
  const latest = useRef(device)
  const { offerUndo } = useDeskContext()
  const [trouble, setTrouble] = useState('')

  const edit = (patch: Partial<Device>) => {
    const next = { ...latest.current, ...patch, ...(writesComma() && { decimal: 'comma' as const }) }
    latest.current = next
    setDraft(next)
    if (begun(next))
      saveDevice(next).then(
        () => setTrouble(''),
        (error: Error) => setTrouble(error.message),
      )
  }
  const setRange = (row: number, patch: Partial<DeviceRange>) =>
    edit({ ranges: draft.ranges.map((range, index) => (index === row ? { ...range, ...patch } : range)) })

  const dropRange = (row: number) => {
    const gone = latest.current.ranges[row]
    if (!gone) return
    edit({ ranges: latest.current.ranges.toSpliced(row, 1) })
    offerUndo(say`Range ${gone.name || row + 1} deleted.`, () =>
      edit({ ranges: latest.current.ranges.toSpliced(row, 0, gone) }),
    )
  }

  return (
    <div class="panel wide" role="group" aria-label={say`Flow device`}>
      <div class="fields">
        <Field label={say`Name`} value={draft.name} onInput={(name) => edit({ name })} />
        <Field label={say`Serial number`} value={draft.serial} onInput={(serial) => edit({ serial })} />
        <Field
          label={say`Calibrated on`}
          type="date"
          value={draft.calibrated}
          onInput={(calibrated) => edit({ calibrated })}
        />
        <Field
          label={say`Valid for`}
          unit={say`months`}
          numeric
          value={draft.intervalMonths}
          onInput={(intervalMonths) => edit({ intervalMonths })}
        />
        <Choice
          label={say`Certificate gives flow in`}
          value={draft.flowUnit}
          options={flowUnits}
          onPick={(flowUnit) => edit({ flowUnit })}
        />
        <Field
          label={say`Calibration density`}
          unit="kg/m³"
          numeric
          hint="1.2041"
          value={draft.calibrationDensity}
          onInput={(calibrationDensity) => edit({ calibrationDensity })}
        />
      </div>
      <p class="q">{say`Flow = K × (device pressure)^m, in Pa: take K and m from your certificate.`}</p>
      <RangesTable class="dv" device={draft} columns={columns} onEdit={setRange} onDelete={dropRange} />
      {trouble && <Finding id="device-found" text={trouble} />}
      <div class="row">
        <button type="button" class="b low" onClick={() => edit({ ranges: [...draft.ranges, emptyRange()] })}>
          {say`Add a range`}
        </button>
        <button type="button" class="b low first" disabled={!begun(draft)} onClick={() => onClose(draft)}>
          {say`Use this device`}
        </button>
        <button type="button" class="b low bare" onClick={() => onClose(undefined)}>
          {say`Close`}
        </button>
      </div>
    </div>
  )
}
