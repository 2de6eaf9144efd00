import { Choice } from './choice.tsx'
import { DeviceField } from './device-field.tsx'
import { Field } from './field.tsx'
import { LimitField } from './limit-field.tsx'
import { procedureWords } from './setup-summary.ts'
import { temperatureWords } from './unit-words.ts'
import { UnitFields } from './unit-fields.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'
import { Cautions } from './cautions.tsx'
import type { TypedSheet } from '../../job/schema.ts'

const subjects = [
  ['enclosure', 'enclosure'],
  ['ducts', 'ducts'],
] as const
const procedures = [
  ['one-point', procedureWords['one-point']],
  ['astm-e779', `${procedureWords['astm-e779']}, 5+ points`],
  ['iso-9972', `${procedureWords['iso-9972']}, 5+ points`],
] as const
const directions = [
  ['depressurize', 'depressurize'],
  ['pressurize', 'pressurize'],
] as const
const stages = [
  ['', 'not said'],
  ['rough-in', 'rough-in'],
  ['rough-in without air handler', 'rough-in without air handler'],
  ['final', 'final'],
  ['existing', 'existing building'],
] as const
const winds = [
  ['', 'not said'],
  ['calm', 'calm'],
  ['light', 'light'],
  ['windy', 'windy'],
] as const
const leakages = [
  ['total', 'total'],
  ['outside', 'to outside'],
] as const
const bases = [
  ['indicated', 'as indicated, at the density of the calibration'],
  ['actual', 'actual, at the density of the air in the device'],
] as const
const readings = [
  ['flow', 'the flow it shows'],
  ['device', 'the pressure at the device'],
] as const

/** Everything about a test that is not a reading. */
export function SetupFields() {
  const { job, editBuilding } = useDeskContext()
  const { test, editTest, editSheet } = useBench()
  const found = useFound()
  const { sheet, units } = test
  const degrees = temperatureWords[units.temperature]
  const ducts = sheet.subject === 'ducts'
  const onePoint = sheet.procedure === 'one-point'

  const number = (key: keyof TypedSheet & string, label: string, unit = '', hint = '') => (
    <Field
      label={label}
      numeric
      unit={unit}
      hint={hint}
      value={sheet[key] as string}
      problem={found(key)}
      onInput={(value) => editSheet({ [key]: value })}
    />
  )

  return (
    <div class="fields">
      <Choice label="Test of" value={sheet.subject} options={subjects} onPick={(subject) => editSheet({ subject })} />
      <Choice
        label="Procedure"
        value={sheet.procedure}
        options={procedures}
        onPick={(procedure) => editSheet({ procedure })}
      />
      <Choice
        label="Direction"
        value={sheet.direction}
        options={directions}
        onPick={(direction) => editSheet({ direction })}
      />
      {ducts && (
        <Choice
          label="Leakage"
          value={sheet.ductLeakage}
          options={leakages}
          onPick={(ductLeakage) => editSheet({ ductLeakage })}
        />
      )}
      {ducts && number('airHandlerFlow', 'Air-handler flow', units.flow)}
      <Field label="Date" type="date" value={test.date} onInput={(date) => editTest({ date })} />
      <Choice label="Stage" value={test.stage} options={stages} onPick={(stage) => editTest({ stage })} />
      <Choice label="Wind" value={test.wind} options={winds} onPick={(wind) => editTest({ wind })} />
      {number('indoor', 'Indoors', degrees)}
      {number('outdoor', 'Outdoors', degrees)}
      <Field
        label="Elevation"
        numeric
        unit={job.units.length}
        value={job.building.elevation}
        problem={found('building.elevation')}
        onInput={(elevation) => editBuilding({ elevation })}
      />
      {number('barometer', 'or barometer', 'Pa')}
      <LimitField />
      <DeviceField />
      <Choice
        label="Written down is"
        wide
        value={sheet.reading}
        options={readings}
        onPick={(reading) => editSheet({ reading })}
      />
      <Choice
        label="Flow is"
        wide
        value={sheet.flowBasis}
        options={bases}
        onPick={(flowBasis) => editSheet({ flowBasis })}
      />
      {onePoint && number('exponent', 'Exponent n', '', ducts ? '0.6' : '0.65')}
      {onePoint && number('exponentUncertainty', 'Uncertainty of n', '', '0.05')}
      {number('pressurePercent', 'Gauge, pressure', '%', '1')}
      {number('pressureFloor', 'Gauge, at least', 'Pa', '0.25')}
      {number('flowPercent', 'Device, flow', '%', '5')}
      <Field
        label={`The instrument’s own result at ${ducts ? 25 : 50} Pa`}
        numeric
        unit={units.flow}
        value={test.instrumentFigure}
        problem={found('instrumentFigure')}
        onInput={(instrumentFigure) => editTest({ instrumentFigure })}
      />
      <UnitFields />
      <div class="fd-f wide">
        <label for="notes">Notes</label>
        <textarea
          id="notes"
          class="in words"
          rows={2}
          maxLength={10_000}
          value={test.notes}
          onInput={(event) => editTest({ notes: event.currentTarget.value })}
        />
      </div>
      <details class="wide">
        <summary class="link">Cautions before a test</summary>
        <Cautions />
      </details>
    </div>
  )
}
