import { useRef, useState } from 'preact/hooks'
import { saveDevice } from '../../book/devices.ts'
import { emptyRange } from '../../job/empty.ts'
import type { Device } from '../../job/schema.ts'
import { writesComma } from '../../units/comma.ts'
import { symbol } from '../../units/symbol.ts'
import { type DeviceRange, RangesTable } from '../calculator/ranges-table.tsx'
import { asRead } from '../../results/in-locale.ts'
import { ChoiceField, TextField, Trouble } from './field.tsx'
import { Said, useSaid } from './said.tsx'
import { wording } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

const flowUnits = (['cfm', 'm3/h', 'L/s'] as const).map((unit) => [unit, symbol(unit)] as const)
const columns: readonly (readonly [keyof DeviceRange, string])[] = [
  ['name', say`Range`],
  ['coefficient', say`Coefficient`],
  ['exponent', say`Exponent`],
  ['minPressure', say`From, Pa`],
  ['maxPressure', say`To, Pa`],
]

/** A device; every keystroke is kept. */
export function DeviceForm({ device, onDelete }: { device: Device; onDelete: () => void }) {
  const [draft, setDraft] = useState(device)
  const [trouble, setTrouble] = useState('')

  // The newest version, for what is put back after more was typed.
  const latest = useRef(device)
  const { said, tell } = useSaid()

  const edit = (patch: Partial<Device>) => {
    const next = { ...latest.current, ...patch, ...(writesComma() && { decimal: 'comma' as const }) }
    latest.current = next
    setDraft(next)
    saveDevice(next).then(
      () => setTrouble(''),
      (error: unknown) => setTrouble(wording(error)),
    )
  }
  const editRange = (row: number, patch: Partial<DeviceRange>) =>
    edit({ ranges: draft.ranges.map((range, index) => (index === row ? { ...range, ...patch } : range)) })

  const dropRange = (row: number) => {
    const gone = latest.current.ranges[row]
    if (!gone) return
    edit({ ranges: latest.current.ranges.toSpliced(row, 1) })
    tell(say`Range ${gone.name || row + 1} deleted.`, say`Put it back`, async () => {
      edit({ ranges: latest.current.ranges.toSpliced(row, 0, gone) })
    })
  }

  return (
    <div class="body">
      <div class="fields">
        <TextField label={say`Name`} value={draft.name} onInput={(name) => edit({ name })} />
        <TextField label={say`Serial number`} value={draft.serial} onInput={(serial) => edit({ serial })} />
        <TextField
          label={say`Calibrated on`}
          type="date"
          value={draft.calibrated}
          onInput={(calibrated) => edit({ calibrated })}
        />
        <TextField
          label={say`Valid for, months`}
          mode="numeric"
          value={draft.intervalMonths}
          onInput={(intervalMonths) => edit({ intervalMonths })}
        />
        <ChoiceField
          label={say`Flow unit of the certificate`}
          value={draft.flowUnit}
          options={flowUnits}
          onPick={(flowUnit) => edit({ flowUnit })}
        />
        <TextField
          label={say`Air density at calibration, kg/m³`}
          mode="decimal"
          placeholder={asRead('1.2041')}
          value={draft.calibrationDensity}
          onInput={(calibrationDensity) => edit({ calibrationDensity })}
        />
      </div>
      <RangesTable class="rg" device={draft} columns={columns} onEdit={editRange} onDelete={dropRange} />
      <Said said={said} />
      <Trouble text={trouble} />
      <div class="acts">
        <button type="button" class="b low" onClick={() => edit({ ranges: [...draft.ranges, emptyRange()] })}>
          {say`Add a range`}
        </button>
        <button type="button" class="b low bare" onClick={onDelete}>
          {say`Delete the device`}
        </button>
      </div>
    </div>
  )
}
