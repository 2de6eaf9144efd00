import type { ComponentChildren } from 'preact'
import { isRegression } from '../../job/edits.ts'
import type { Building, Test, TypedSheet, TypedUnits } from '../../job/schema.ts'
import { symbol } from '../../units/symbol.ts'
import { Choice } from './choice.tsx'
import { Field } from './field.tsx'
import { procedureWords } from './setup-summary.ts'
import { temperatureWords } from '../../results/unit-words.ts'
import { asRead } from '../../results/in-locale.ts'
import { say } from '../../words/say.ts'

/** Which fields are shown, and which only to be looked at. */
export interface Offer {
  shows: (field: string) => boolean
  fixed: (field: string) => boolean
}

export const everything: Offer = { shows: () => true, fixed: () => false }

interface Props {
  test: Test
  elevation: string
  /** The unit of the elevation. */
  length: TypedUnits['length']
  found: (path: string) => string | undefined
  offer: Offer
  onTest: (patch: Partial<Test>) => void
  onSheet: (patch: Partial<TypedSheet>) => void
  onBuilding: (patch: Partial<Building>) => void
  /** What to see to, said where the direction is chosen. */
  care?: ComponentChildren
  /** The choice of a limit. */
  limit?: ComponentChildren
  /** Whether several fans are offered. */
  fans?: boolean
  /** The choice of a device. */
  device?: ComponentChildren
}

const subjects = [
  ['enclosure', say`enclosure`],
  ['ducts', say`ducts`],
] as const
/** The procedures that a test may follow, as the list says them. */
export const procedures = [
  ['one-point', procedureWords['one-point']],
  ['two-point', say`two-point, ASTM E1827`],
  ['astm-e779', say`${procedureWords['astm-e779']}, 5+ points`],
  ['iso-9972', say`${procedureWords['iso-9972']}, 5+ points`],
  ['astm-e3158', say`${procedureWords['astm-e3158']}, large building, 5+ points`],
] as const
const corrections = [
  ['always', say`always`],
  ['threshold', asRead(say`above 5,000 ft or beyond 30 °F`)],
] as const
const directions = [
  ['depressurize', say`depressurize`],
  ['pressurize', say`pressurize`],
] as const
const stages = [
  ['', say`not said`],
  ['rough-in', say`rough-in`],
  ['rough-in without air handler', say`rough-in without air handler`],
  ['final', say`final`],
  ['existing', say`existing building`],
] as const
const winds = [
  ['', say`not said`],
  ['calm', say`calm`],
  ['light', say`light`],
  ['windy', say`windy`],
] as const
const leakages = [
  ['total', say`total`],
  ['outside', say`to outside`],
] as const
const bases = [
  ['indicated', say`as indicated, at the density of the calibration`],
  ['actual', say`actual, at the density of the air in the device`],
] as const
const readings = [
  ['flow', say`the flow it shows`],
  ['device', say`the pressure at the device`],
] as const
const ofSeveral = [...readings, ['fans', say`several fans at once`]] as const

/** What stands for a scatter that was not typed, by the wind. */
const scatterOf = { '': '0.2', calm: '0.2', light: '0.7', windy: '2' } as const
const linesOf = [
  ['least-squares', say`least squares, as the procedure has it`],
  ['weighted', say`weighted, where the program allows it`],
] as const

/** Everything about a test that is not a reading and not a word of its own. */
export function SheetFields(props: Props) {
  const { test, elevation, length, found, offer, onTest, onSheet, onBuilding, care, limit, device } = props
  const { sheet, units } = test
  const { shows } = offer
  const degrees = temperatureWords[units.temperature]
  const ducts = sheet.subject === 'ducts'
  const onePoint = sheet.procedure === 'one-point'
  const regression = isRegression(sheet)

  const number = (key: keyof TypedSheet & string, label: string, unit = '', hint = '') =>
    shows(key) && (
      <Field
        label={label}
        numeric
        unit={unit}
        hint={hint}
        fixed={offer.fixed(key)}
        value={(sheet[key] ?? '') as string}
        problem={found(key)}
        onInput={(value) => onSheet({ [key]: value })}
      />
    )
  const choice = <K extends keyof TypedSheet & string>(
    key: K,
    label: string,
    options: readonly (readonly [TypedSheet[K] & string, string])[],
    wide = false,
  ) =>
    shows(key) && (
      <Choice
        label={label}
        wide={wide}
        fixed={offer.fixed(key)}
        value={(sheet[key] ?? options[0]?.[0]) as TypedSheet[K] & string}
        options={options}
        onPick={(value) => onSheet({ [key]: value })}
      />
    )

  return (
    <>
      {choice('subject', say`Test of`, subjects)}
      {choice('procedure', say`Procedure`, procedures)}
      {choice('direction', say`Direction`, directions)}
      {care && (
        <div class="wide" role="note">
          {care}
        </div>
      )}
      {ducts && choice('ductLeakage', say`Leakage`, leakages)}
      {ducts && number('airHandlerFlow', say`Air-handler flow`, symbol(units.flow))}
      {shows('date') && (
        <Field
          label={say`Date`}
          type="date"
          fixed={offer.fixed('date')}
          value={test.date}
          onInput={(date) => onTest({ date })}
        />
      )}
      {shows('stage') && (
        <Choice
          label={say`Stage`}
          fixed={offer.fixed('stage')}
          value={test.stage}
          options={stages}
          onPick={(stage) => onTest({ stage })}
        />
      )}
      {shows('wind') && (
        <Choice
          label={say`Wind`}
          fixed={offer.fixed('wind')}
          value={test.wind}
          options={winds}
          onPick={(wind) => onTest({ wind })}
        />
      )}
      {number('indoor', say`Indoors`, degrees)}
      {number('outdoor', say`Outdoors`, degrees)}
      {shows('elevation') && (
        <Field
          label={say`Elevation`}
          numeric
          unit={length}
          fixed={offer.fixed('elevation')}
          value={elevation}
          problem={found('building.elevation')}
          onInput={(typed) => onBuilding({ elevation: typed })}
        />
      )}
      {number('barometer', say`or barometer`, 'Pa')}
      {choice('corrections', say`Correct for the air`, corrections)}
      {limit}
      {device}
      {choice('reading', say`Typed for each point`, props.fans ? ofSeveral : readings, true)}
      {choice('flowBasis', say`Flow is`, bases, true)}
      {onePoint && number('exponent', say`Exponent n`, '', ducts ? '0.6' : '0.65')}
      {onePoint && number('exponentUncertainty', say`Uncertainty of n`, '', '0.05')}
      {number('pressurePercent', say`Uncertainty of pressure`, '%', '1')}
      {number('pressureFloor', say`but at least`, 'Pa', '0.25')}
      {number('flowPercent', say`Uncertainty of flow`, '%', '5')}
      {number('baselineSeconds', say`Baseline averaged over`, 's')}
      {number('readingSeconds', say`A reading averaged over`, 's')}
      {number('pressureScatter', say`Scatter of a pressure reading`, 'Pa', scatterOf[test.wind])}
      {regression && choice('line', say`Line`, linesOf)}
      {shows('instrumentFigure') && (
        <Field
          label={say`The instrument’s own result at ${ducts ? 25 : 50} Pa`}
          numeric
          unit={symbol(units.flow)}
          fixed={offer.fixed('instrumentFigure')}
          value={test.instrumentFigure}
          problem={found('instrumentFigure')}
          onInput={(instrumentFigure) => onTest({ instrumentFigure })}
        />
      )}
    </>
  )
}
