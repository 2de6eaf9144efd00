import { emptyZone } from '../../job/empty.ts'
import type { TypedZone } from '../../job/schema.ts'
import { readZone } from '../../job/zones.ts'
import { CheckList } from '../figure/check-list.tsx'
import { FigureTable } from '../figure/figure-table.tsx'
import { Field } from './field.tsx'
import { besideCell } from '../../results/reading.ts'
import { flowWords } from '../../results/unit-words.ts'
import { useBench } from './use-context.ts'
import { zoneLines } from '../../results/zone-lines.ts'
import { language, say } from '../../words/say.ts'
import { wordsInLocale } from '../../results/in-locale.ts'

/** Attic, garage and other zones: how leaky they are to the house and to outdoors. */
export function ZoneFields() {
  const { test, editTest } = useBench()
  const zones = test.zones ?? [emptyZone()]
  const edit = (at: number, patch: Partial<TypedZone>) =>
    editTest({ zones: zones.map((zone, one) => (one === at ? { ...zone, ...patch } : zone)) })
  return (
    <>
      <div class="fields">
        <p class="wide">
          {say`Hold the house at one pressure, 50 Pa as a rule, and measure across house and zone, and across zone and outdoors, with the zone closed. For the flows measure the house again with the door or hatch to the zone open.`}
        </p>
        <p class="wide">
          {say`Let no engine or burner run in a garage while the house is depressurized, and close what gives off fumes: the house draws its air from there.`}
        </p>
      </div>
      {zones.map((zone, at) => (
        // Zones have no id of their own, and none is moved.
        // oxlint-disable-next-line react/no-array-index-key
        <Zone key={at} zone={zone} at={at} onEdit={(patch) => edit(at, patch)} />
      ))}
      <p>
        <button type="button" class="link" onClick={() => editTest({ zones: [...zones, emptyZone()] })}>
          {say`Add a zone`}
        </button>{' '}
        {zones.length > 1 && (
          <button type="button" class="link" onClick={() => editTest({ zones: zones.slice(0, -1) })}>
            {say`Remove the last zone`}
          </button>
        )}
      </p>
    </>
  )
}

interface Props {
  zone: TypedZone
  at: number
  onEdit: (patch: Partial<TypedZone>) => void
}

function Zone({ zone, at, onEdit }: Props) {
  const { units } = useBench().test
  const read = readZone(zone, at, units)
  const lines = wordsInLocale(zoneLines(read, at, units.flow), language())
  const found = (path: string) => {
    const problem = read.problems.find((one) => one.path === path)
    return problem && besideCell(path, problem.message)
  }
  const field = (key: keyof TypedZone, label: string, unit = '', hint = '') => (
    <Field
      label={label}
      numeric
      unit={unit}
      hint={hint}
      value={zone[key]}
      problem={found(`zones.${at}.${key}`)}
      onInput={(value) => onEdit({ [key]: value })}
    />
  )
  const name = zone.name.trim() || say`Zone ${at + 1}`
  return (
    <div role="group" aria-label={name}>
      <div class="fields">
        <Field
          label={say`Name of the zone`}
          value={zone.name}
          hint={say`attic`}
          onInput={(typed) => onEdit({ name: typed })}
        />
        {field('house', say`House to outdoors`, 'Pa', '50')}
        {field('houseZone', say`House to zone, p1`, 'Pa')}
        {field('zoneOutdoors', say`Zone to outdoors, p2`, 'Pa')}
        {field('closed', say`House flow, zone closed`, flowWords[units.flow])}
        {field('opened', say`House flow, zone opened`, flowWords[units.flow])}
        {field('exponent', say`Exponent n`, '', '0.65')}
      </div>
      {lines.length > 0 && <FigureTable groups={[{ title: name, lines }]} />}
      {read.checks.length > 0 && <CheckList checks={read.checks} />}
    </div>
  )
}
