import { useEffect, useRef, useState } from 'preact/hooks'
import { fileParts } from '../../book/json.ts'
import { deleteLimit, restoreLimit, saveLimit } from '../../book/limits.ts'
import { fromOffice } from '../../book/office.ts'
import { setFrom } from '../../job/kept-limit.ts'
import { keptLimitSchema, type KeptLimit } from '../../job/schema.ts'
import { sound } from '../../book/sound.ts'
import { writesComma } from '../../units/comma.ts'
import { readNumber } from '../../units/read.ts'
import { symbol } from '../../units/symbol.ts'
import { DamagedKept } from './damaged-kept.tsx'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { dropForm, keepForm, readForm } from './form-draft.ts'
import { KeptLimitForm, blankLimit, figureWords } from './kept-limit-form.tsx'
import { Said, useSaid } from './said.tsx'
import { SetForm } from './set-form.tsx'
import { scopeWords } from './scope-words.ts'
import { asRead } from '../../results/in-locale.ts'
import { say } from '../../words/say.ts'

/** Under which name a limit that is typed is kept until it is sent off. */
const limitForm = 'limit'

/** Limits of the owner's own: from a permit, a program's paper, a local amendment. */
export function KeptLimits({ limits }: { limits: readonly KeptLimit[] }) {
  // The form that is open: a limit to be typed or changed, or a set to be begun.
  const [draft, setDraft] = useState<KeptLimit | 'set'>()
  const { said, tell, run, once } = useSaid()
  const own = limits.filter(({ id }) => !fromOffice(id))

  useEffect(() => {
    const look = async () => {
      const begun = sound(keptLimitSchema, await readForm(limitForm))
      // Somebody may have opened a form meanwhile.
      if (begun) setDraft((now) => now ?? begun)
    }
    void look()
  }, [])
  // Also where the form of the same limit stands open: a press leads there.
  const [asked, setAsked] = useState(0)
  const form = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (asked > 0) form.current?.querySelector('input')?.focus()
  }, [asked])
  const change = (limit: KeptLimit) => {
    setDraft(limit)
    setAsked((times) => times + 1)
  }
  const close = () => {
    dropForm(limitForm)
    setDraft(undefined)
  }
  const sets = [...new Set(limits.map(({ set }) => set ?? ''))].toSorted((a, b) => a.localeCompare(b))

  const copy = (limit: KeptLimit) =>
    run(
      () => saveLimit({ ...limit, name: say`${limit.name}, own copy` }),
      () => tell(say`${limit.name} was copied to your own.`),
    )
  const keep = (limit: KeptLimit) =>
    once(async () => {
      const value = readNumber(limit.value, writesComma() ? 'both' : undefined)
      if (!limit.name.trim()) throw new Error(say`type a name by which you know the limit.`)
      if (typeof value !== 'number' && value.code === 'two ways') throw new Error(value.message)
      if (typeof value !== 'number' || value <= 0) throw new Error(say`type a number above zero as the limit.`)
      await saveLimit({ ...limit, name: limit.name.trim(), set: limit.set?.trim() ?? '' })
    }, close)
  const begin = (edition: string, set: string) =>
    once(
      async () => {
        if (sets.includes(set)) throw new Error(say`there is a set called ${set}: give this one another name.`)
        for (const limit of setFrom(edition, set)) await saveLimit(limit)
      },
      () => {
        setDraft(undefined)
        tell(say`${set}: the limits of ${edition} were copied.`)
      },
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
      {sets.map((set) => (
        <div key={set} class="kept-set">
          {set && <h3>{set}</h3>}
          <ul class="plain">
            {limits
              .filter((limit) => (limit.set ?? '') === set)
              .map((limit) => (
                <Kept
                  key={limit.id}
                  limit={limit}
                  onCopy={() => copy(limit)}
                  onExport={() => save(say`limit ${limit.name}`, [limit])}
                  onChange={() => change(limit)}
                  onDelete={() => remove(limit)}
                />
              ))}
          </ul>
          {set && own.some((limit) => limit.set === set) && (
            <div class="acts">
              <button type="button" class="b low" onClick={() => setDraft({ ...blankLimit(), set })}>
                {say`Add to this set`}
                <span class="vh"> {set}</span>
              </button>
              <button
                type="button"
                class="b low"
                onClick={() =>
                  save(
                    set,
                    own.filter((limit) => limit.set === set),
                  )
                }
              >
                {say`Export this set`}
                <span class="vh"> {set}</span>
              </button>
            </div>
          )}
        </div>
      ))}
      {draft === 'set' ? (
        <SetForm onCopy={begin} onLeave={() => setDraft(undefined)} />
      ) : draft ? (
        <div ref={form}>
          <KeptLimitForm
            key={draft.id}
            begin={draft}
            sets={sets.filter(Boolean)}
            onType={(limit) => keepForm(limitForm, limit)}
            onKeep={keep}
            onLeave={close}
          />
        </div>
      ) : (
        <div class="acts">
          <button type="button" class="b low" onClick={() => setDraft(blankLimit())}>
            {say`Add a limit`}
          </button>
          <button type="button" class="b low" onClick={() => setDraft('set')}>
            {say`Begin a set from an edition`}
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

interface KeptProps {
  limit: KeptLimit
  onCopy: () => void
  onExport: () => void
  onChange: () => void
  onDelete: () => void
}

/** One kept limit, and what can be done with it. */
function Kept({ limit, onCopy, onExport, onChange, onDelete }: KeptProps) {
  const { name, figure, unit, value, terms = {}, origin } = limit
  const bound = unit === '1/h' ? asRead(value) : `${asRead(value)} ${symbol(unit)}`
  const named = figureWords(figure, unit)
  const act = (words: string, onClick: () => void, bare = false) => (
    <button type="button" class={bare ? 'b low bare' : 'b low'} onClick={onClick}>
      {words}
      <span class="vh"> {name}</span>
    </button>
  )
  return (
    <li>
      <span>
        <b>{name}</b> {terms.comparison === '<' ? say`${named} less than ${bound}` : say`${named} at most ${bound}`}
        {scopeWords(terms) && `, ${scopeWords(terms)}`} <span class="q">{origin || say`no origin given`}</span>
      </span>
      {fromOffice(limit.id) ? (
        <span class="acts">
          <span class="q">{say`from your office`}</span>
          {act(say`Copy to my own`, onCopy)}
        </span>
      ) : (
        <span class="acts">
          {act(say`Change`, onChange)}
          {act(say`Export`, onExport)}
          {act(say`Delete`, onDelete, true)}
        </span>
      )}
    </li>
  )
}
