import { saveSettings } from '../../book/settings.ts'
import type { Tester } from '../../job/schema.ts'
import { Field } from './field.tsx'
import { useDeskContext } from './use-context.ts'
import { say } from '../../words/say.ts'

const keys = ['name', 'company', 'licence', 'licenceExpiry', 'phone', 'email'] as const
const same = (a: Tester, b: Tester): boolean => keys.every((key) => a[key] === b[key])

/** Who tests. A profile is kept once and copied into each new job; while a job agrees with it, both change together. */
export function TesterFields() {
  const { job, settings, editJob } = useDeskContext()
  const { tester } = job
  const agrees = same(tester, settings.tester)

  const edit = (key: keyof Tester, value: string) => {
    const changed = { ...tester, [key]: value }
    editJob((old) => ({ ...old, tester: { ...old.tester, [key]: value } }))
    if (agrees) void saveSettings({ tester: changed })
  }
  const field = (key: keyof Tester, label: string, type: 'text' | 'date' | 'tel' | 'email' = 'text') => (
    <Field
      label={label}
      type={type}
      wide={type === 'email'}
      value={tester[key]}
      onInput={(value) => edit(key, value)}
    />
  )
  return (
    <div class="fields">
      {field('name', say`Name`)}
      {field('company', say`Company`)}
      {field('licence', say`Licence or rater id`)}
      {field('licenceExpiry', say`It expires on`, 'date')}
      {field('phone', say`Phone`, 'tel')}
      {field('email', say`Email`, 'email')}
      <p class="wide q">
        {agrees ? (
          say`Your profile: copied into each new job.`
        ) : (
          <>
            {say`This job differs from your profile.`}{' '}
            <button type="button" class="link" onClick={() => void saveSettings({ tester })}>
              {say`Keep as profile`}
            </button>{' '}
            <button
              type="button"
              class="link"
              onClick={() => editJob((old) => ({ ...old, tester: { ...settings.tester } }))}
            >
              {say`Take the profile`}
            </button>
          </>
        )}
      </p>
    </div>
  )
}
