import { useState } from 'preact/hooks'
import { deleteDevice, listDevices, restoreDevice, saveDevice } from '../../book/devices.ts'
import { fileParts } from '../../book/json.ts'
import { getSettings } from '../../book/settings.ts'
import { emptyDevice } from '../../job/empty.ts'
import type { Device } from '../../job/schema.ts'
import { calibration } from './calibration.ts'
import { DamagedKept } from './damaged-kept.tsx'
import { DeviceForm } from './device-form.tsx'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { Empty, Trouble } from './field.tsx'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { say } from '../../words/say.ts'

/** The owner's flow devices, with the ranges of their calibration certificates. */
export function DevicesSection() {
  const devices = useLive(listDevices, ['devices'])
  const [open, setOpen] = useState('')
  const { said, tell, run, once } = useSaid()

  const add = () =>
    once(async () => {
      const { units } = await getSettings()
      const device = await saveDevice({ ...emptyDevice(units.flow), name: say`New device` })
      setOpen(device.id)
    })
  const remove = (device: Device) =>
    run(
      () => deleteDevice(device.id),
      () => tell(say`${device.name} was deleted.`, say`Put it back`, () => restoreDevice(device.id)),
    )

  // A key that moves when the list arrives takes no press.
  if (!devices.value) return <Trouble text={devices.trouble} />
  return (
    <>
      <div class="head">
        <p class="q lead">
          {say`Coefficients come from your own calibration certificate: flow = coefficient × (pressure at the device)`}
          <sup>{say`exponent`}</sup>
          {say`, with the pressure in Pa. No device is built in.`}
        </p>
        <button
          type="button"
          class="b"
          disabled={!devices.value.length}
          onClick={() =>
            run(() => download(fileName('devices', 'json'), jsonType, fileParts({ devices: devices.value ?? [] })))
          }
        >
          {say`Export all`}
        </button>
        <button type="button" class="b" onClick={add}>
          {say`Add a device`}
        </button>
      </div>
      <Trouble text={devices.trouble} />
      <DamagedKept store="devices" />
      {devices.value.length === 0 && (
        <Empty title={say`No devices yet`}>
          <p>
            {say`You need one only when you write down the pressure at the device instead of a flow. Add it with the ranges of its certificate.`}
          </p>
        </Empty>
      )}
      {devices.value.map((device) => {
        const state = calibration(device)
        return (
          <details
            key={device.id}
            class="sec"
            open={device.id === open}
            onToggle={(event) => {
              if (event.currentTarget.open) setOpen(device.id)
              else if (open === device.id) setOpen('')
            }}
          >
            <summary>
              <h2>{device.name || say`Device without a name`}</h2>
              <span class={state.overdue ? 'st doubt' : 'q'}>{state.words}</span>
            </summary>
            <DeviceForm device={device} onDelete={() => remove(device)} />
          </details>
        )
      })}
      <Said said={said} foot />
    </>
  )
}
