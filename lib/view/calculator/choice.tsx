import { useId } from 'preact/hooks'
import { Finding } from './finding.tsx'

interface Props<T extends string> {
  label: string
  value: T
  options: readonly (readonly [T, string])[]
  onPick: (value: T) => void
  problem?: string | undefined
  wide?: boolean
  /** An id by which other parts of the view find it. */
  id?: string
}

/** A labelled choice of one. */
export function Choice<T extends string>({ label, value, options, onPick, problem, wide, id: known }: Props<T>) {
  const own = useId()
  const id = known ?? own
  return (
    <div class={wide ? 'fd-f wide' : 'fd-f'}>
      <label for={id}>{label}</label>
      <select
        id={id}
        class="in"
        value={value}
        {...(problem && { 'aria-describedby': `${id}-found` })}
        onChange={(event) => {
          const picked = options.find(([option]) => option === event.currentTarget.value)
          if (picked) onPick(picked[0])
        }}
      >
        {options.map(([option, words]) => (
          <option key={option} value={option}>
            {words}
          </option>
        ))}
      </select>
      {problem && <Finding id={`${id}-found`} text={problem} />}
    </div>
  )
}
