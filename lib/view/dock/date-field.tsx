import { writeDate } from '../../form/dates.ts'
import type { Write } from '../../form/schema.ts'
import { Pick } from './pick.tsx'
import { say } from '../../words/say.ts'

const patterns = [
  'MM/dd/yyyy',
  'M/d/yyyy',
  'MM/dd/yy',
  'yyyy-MM-dd',
  'dd.MM.yyyy',
  'd.M.yyyy',
  'dd/MM/yyyy',
  'dd-MM-yyyy',
  'MM-dd-yyyy',
  'yyyy/MM/dd',
  'yyyyMMdd',
  'MM',
  'dd',
  'yyyy',
]

/** Months above and days below 12 look alike; this one cannot be misread. */
const unmistakable = '2026-02-25'

interface DateFieldProps {
  iso: string
  write: Write
  onChange: (write: Write) => void
}

/** The order of a date, chosen from examples. The last three serve pages with a box each for month, day and year. */
export function DateField({ iso, write, onChange }: DateFieldProps) {
  const all = write.date && !patterns.includes(write.date) ? [write.date, ...patterns] : patterns
  const example = (pattern: string) => writeDate(iso, pattern) ?? writeDate(unmistakable, pattern) ?? pattern
  return (
    <div class="fmt">
      <Pick
        wide
        label={say`Written as`}
        value={write.date ?? 'yyyy-MM-dd'}
        options={all.map((pattern) => ({ value: pattern, label: `${example(pattern)}   (${pattern})` }))}
        onChange={(date) => onChange({ ...write, date })}
      />
    </div>
  )
}
