import { listDevices } from '../../book/devices.ts'
import { listLimits } from '../../book/limits.ts'
import type { Settings } from '../../book/schema.ts'
import type { FirstTest } from '../../job/first-test.ts'
import { publishedLimits } from '../../limits/index.ts'
import { procedures } from '../calculator/sheet-fields.tsx'
import { asRead } from '../../results/in-locale.ts'
import { say } from '../../words/say.ts'
import { ChoiceField, TextField } from './field.tsx'
import { subjectOf } from '../../reduce/figures/index.ts'
import { useLive } from '../parts/use-live.ts'

const stages = [
  ['', say`not said`],
  ['rough-in', say`rough-in`],
  ['final', say`final`],
  ['existing', say`existing building`],
] as const

interface Props {
  set: NonNullable<Settings['firstTest']>
  onSet: (patch: FirstTest) => void
}

/** How the first test of each new job is set up. */
export function FirstTestPanel({ set, onSet }: Props) {
  const devices = useLive(listDevices, ['devices']).value ?? []
  const kept = useLive(listLimits, ['limits']).value ?? []
  const limits: (readonly [string, string])[] = [
    ['', say`none`],
    ...kept
      .filter(({ figure }) => subjectOf(figure) === 'enclosure')
      .map((one): [string, string] => [`kept:${one.id}`, one.set ? `${one.set}: ${one.name}` : one.name]),
    ...publishedLimits
      .filter(({ subject }) => subject === 'enclosure')
      .map((one): [string, string] => [one.id, asRead(one.title)]),
  ]
  const owned: (readonly [string, string])[] = [
    ['', say`none`],
    ...devices.map((one): [string, string] => [one.id, one.name.trim() || say`Device without a name`]),
  ]
  return (
    <section class="group">
      <h2>{say`Set-up of a new job`}</h2>
      <p class="q">{say`For the first test of each new job. Jobs that exist keep what they have.`}</p>
      <div class="fields">
        <ChoiceField
          label={say`Limit`}
          wide
          value={set.limit ?? ''}
          options={limits}
          onPick={(limit) => onSet({ limit })}
        />
        <ChoiceField
          label={say`Procedure`}
          value={set.procedure ?? 'one-point'}
          options={procedures}
          onPick={(procedure) => onSet({ procedure })}
        />
        <ChoiceField label={say`Stage`} value={set.stage ?? ''} options={stages} onPick={(stage) => onSet({ stage })} />
        <ChoiceField
          label={say`Device`}
          value={set.device ?? ''}
          options={owned}
          onPick={(device) => onSet({ device })}
        />
        <TextField
          label={say`Uncertainty of pressure, %`}
          mode="decimal"
          placeholder="1"
          value={set.pressurePercent ?? ''}
          onInput={(pressurePercent) => onSet({ pressurePercent })}
        />
        <TextField
          label={say`Uncertainty of flow, %`}
          mode="decimal"
          placeholder="5"
          value={set.flowPercent ?? ''}
          onInput={(flowPercent) => onSet({ flowPercent })}
        />
      </div>
    </section>
  )
}
