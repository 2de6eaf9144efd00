import { Finding } from './finding.tsx'
import { useId } from '../parts/use-id.ts'

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

/** Letters that half the width of a popup shows of a closed list. */
const half = 24

/** A labelled choice of one. Takes the whole width where a choice would be cut off in half of it. */
export function Choice<T extends string>(props: Props<T>) {
  const { label, value, options, onPick, problem, wide, fixed, id: known } = props
  const own = useId()
  const id = known ?? own
  const whole = wide || options.some(([, words]) => words.length > half)
  return (
    <div class={whole ? 'fd-f wide' : 'fd-f'}>
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
