import { PageIcon } from '../parts/page-icons.tsx'

/** What is wrong with a cell and what to do, in words, beside the cell. */
export function Finding({ id, text }: { id: string; text: string }) {
  return (
    <p class="finding" id={id}>
      <PageIcon name="doubtful" /> {text}
    </p>
  )
}
