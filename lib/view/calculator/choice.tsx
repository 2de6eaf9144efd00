import { Finding } from './finding.tsx'
import { useId } from '../use-id.ts'

interface Props<T extends string> {
  label: string
  value: T
  options: readonly (readonly [T, string])[]
  onPick: (value: T) => void
  problem?: string | undefined
  wide?: boolean
  /** Shown, not to be changed. */
  fixed?: boolean | undefined
  /** An id by which other parts of the view find it. */
  id?: string
}

/** A labelled choice of one. */
export function Choice<T extends string>(props: Props<T>) {
  const { label, value, options, onPick, problem, wide, fixed, id: known } = props
  const own = useId()
  const id = known ?? own
  return (
    <div class={wide ? 'fd-f wide' : 'fd-f'}>
      <label for={id}>{label}</label>
      <select
        id={id}
        class="in"
        part="input"
        disabled={fixed}
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
