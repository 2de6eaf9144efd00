import { useState } from 'preact/hooks'
import { fileParts } from '../../book/json.ts'
import { deleteLimit, restoreLimit, saveLimit } from '../../book/limits.ts'
import { fromOffice } from '../../book/office.ts'
import type { KeptLimit } from '../../job/schema.ts'
import { ownLimitFigures } from '../../job/own-limit.ts'
import { wordOf } from '../../reduce/figures/index.ts'
import { readNumber } from '../../units/read.ts'
import { symbol } from '../../units/symbol.ts'
import { download, jsonType } from './download.ts'
import { ChoiceField, TextField } from './field.tsx'
import { fileName } from './file-name.ts'
import { Said, useSaid } from './said.tsx'
import { DamagedKept } from './damaged-kept.tsx'
import { say } from '../../words/say.ts'
import { asRead } from '../in-locale.ts'

const units: Record<string, readonly string[]> = {
  'air-changes-50': ['1/h'],
  'flow-50': ['cfm', 'm3/h', 'L/s'],
  'flow-50-per-enclosure-area': ['cfm/ft2', 'm3/(h.m2)', 'L/(s.m2)'],
  'flow-75-per-enclosure-area': ['cfm/ft2', 'm3/(h.m2)', 'L/(s.m2)'],
  'duct-flow-25-per-floor-area': ['cfm/100ft2', 'm3/(h.m2)', 'L/(s.m2)'],
  'duct-flow-25': ['cfm', 'm3/h', 'L/s'],
  'duct-share-of-air-handler': ['%'],
}
const figures = [...ownLimitFigures.enclosure, ...ownLimitFigures.ducts]
const firstUnit = (figure: string): string => units[figure]?.[0] ?? ''
const nameOf = (figure: string, unit: string): string =>
  figure.startsWith('duct-') ? say`ducts, ${wordOf(figure, unit)}` : wordOf(figure, unit)

const blank = (): KeptLimit => ({
  id: crypto.randomUUID(),
  name: '',
  figure: 'air-changes-50',
  value: '',
  unit: '1/h',
  origin: '',
})

/** Limits of the owner's own: from a permit, a program's paper, a local amendment. */
export function KeptLimits({ limits }: { limits: readonly KeptLimit[] }) {
  const [draft, setDraft] = useState<KeptLimit>()
  const { said, tell, run, once } = useSaid()
  const own = limits.filter(({ id }) => !fromOffice(id))

  const copy = (limit: KeptLimit) =>
    run(
      () => saveLimit({ ...limit, name: say`${limit.name}, own copy` }),
      () => tell(say`${limit.name} was copied to your own.`),
    )
  const add = () =>
    once(
      async () => {
        if (!draft) return
        const value = readNumber(draft.value)
        if (!draft.name.trim()) throw new Error(say`type a name by which you know the limit.`)
        if (typeof value !== 'number' || value <= 0) throw new Error(say`type a number above zero as the limit.`)
        await saveLimit(draft)
      },
      () => setDraft(undefined),
    )
  const remove = (limit: KeptLimit) =>
    run(
      () => deleteLimit(limit.id),
      () => tell(say`${limit.name} was deleted.`, say`Put it back`, () => restoreLimit(limit.id)),
    )
  const save = (what: string, chosen: KeptLimit[]) =>
    run(() => download(fileName(what, 'json'), jsonType, fileParts({ limits: chosen })))

  return (
    <section class="group">
      <h2>{say`Limits of your own`}</h2>
      <DamagedKept store="limits" />
      {limits.length === 0 && !draft && (
        <p class="q">{say`None yet. Keep here what a permit, a program or a local amendment asks for, with its origin.`}</p>
      )}
      <ul class="plain">
        {limits.map((limit) => (
          <li key={limit.id}>
            <span>
              <b>{limit.name}</b>{' '}
              {say`${nameOf(limit.figure, limit.unit)} at most ${asRead(String(limit.value))} ${symbol(limit.unit)}`}{' '}
              <span class="q">{limit.origin || say`no origin given`}</span>
            </span>
            {fromOffice(limit.id) ? (
              <span class="acts">
                <span class="q">{say`from your office`}</span>
                <button type="button" class="b low" onClick={() => copy(limit)}>
                  {say`Copy to my own`}
                  <span class="vh"> {limit.name}</span>
                </button>
              </span>
            ) : (
              <span class="acts">
                <button type="button" class="b low" onClick={() => save(say`limit ${limit.name}`, [limit])}>
                  {say`Export`}
                  <span class="vh"> {limit.name}</span>
                </button>
                <button type="button" class="b low bare" onClick={() => remove(limit)}>
                  {say`Delete`}
                  <span class="vh"> {limit.name}</span>
                </button>
              </span>
            )}
          </li>
        ))}
      </ul>
      {draft ? (
        <form
          class="sheet"
          onSubmit={(event) => {
            event.preventDefault()
            add()
          }}
        >
          <div class="fields">
            <TextField label={say`Name`} value={draft.name} onInput={(name) => setDraft({ ...draft, name })} />
            <ChoiceField
              label={say`On the figure`}
              value={draft.figure}
              options={figures.map((figure) => [figure, nameOf(figure, firstUnit(figure))] as const)}
              onPick={(figure) => setDraft({ ...draft, figure, unit: firstUnit(figure) })}
            />
            <TextField
              label={say`At most`}
              mode="decimal"
              value={draft.value}
              onInput={(value) => setDraft({ ...draft, value })}
            />
            <ChoiceField
              label={say`Unit`}
              value={draft.unit}
              options={(units[draft.figure] ?? []).map((unit) => [unit, symbol(unit)] as const)}
              onPick={(unit) => setDraft({ ...draft, unit })}
            />
            <TextField
              label={say`Where it stands`}
              wide
              value={draft.origin}
              placeholder={say`paper, edition, clause, date`}
              onInput={(origin) => setDraft({ ...draft, origin })}
            />
          </div>
          <div class="acts">
            <button type="submit" class="b low first">
              {say`Keep it`}
            </button>
            <button type="button" class="b low bare" onClick={() => setDraft(undefined)}>
              {say`Leave it`}
            </button>
          </div>
        </form>
      ) : (
        <div class="acts">
          <button type="button" class="b low" onClick={() => setDraft(blank())}>
            {say`Add a limit`}
          </button>
          {own.length > 0 && (
            <button type="button" class="b low" onClick={() => save('limits', own)}>
              {say`Export all`}
            </button>
          )}
        </div>
      )}
      <Said said={said} />
    </section>
  )
}
