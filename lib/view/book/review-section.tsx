import { useState } from 'preact/hooks'
import { closeReview, listReviews, openReview } from '../../book/reviews.ts'
import { Empty, Trouble } from './field.tsx'
import { ReviewView } from './review-view.tsx'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { day, time } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** Review files from elsewhere: opened here, computed anew, noted on, and sent back. */
export function ReviewSection() {
  const reviews = useLive(listReviews, ['reviews'])
  const [open, setOpen] = useState('')
  const { said, run } = useSaid()

  const read = (input: HTMLInputElement) => {
    const file = input.files?.[0]
    input.value = ''
    if (file) run(async () => setOpen((await openReview(file)).id))
  }

  return (
    <>
      <div class="head">
        <p class="q lead">
          {say`A review file holds one job: what was typed, what came of it, what was entered and the proof of the chain. Here every figure is computed anew from the readings. Nothing of it is taken into your own book.`}
        </p>
        <label class="b file">
          {say`Open a review file`}
          <input
            type="file"
            class="vh"
            accept="application/json,.json"
            onChange={(event) => read(event.currentTarget)}
          />
        </label>
      </div>
      <Trouble text={reviews.trouble} />
      <Said said={said} />
      {reviews.value?.length === 0 && (
        <Empty title={say`No review file open`}>
          <p>{say`Open one that you were sent. To make one yourself, go to Jobs and choose “Review file”.`}</p>
        </Empty>
      )}
      {reviews.value?.map((review) => (
        <details
          key={review.id}
          class="sec"
          open={review.id === open}
          onToggle={(event) => {
            if (event.currentTarget.open) setOpen(review.id)
            else if (open === review.id) setOpen('')
          }}
        >
          <summary>
            <h2>{review.name}</h2>
            <span class="q">{say`opened ${day(review.opened)}, ${time(review.opened)}`}</span>
          </summary>
          {review.id === open && <ReviewView id={review.id} onClose={() => run(() => closeReview(review.id))} />}
        </details>
      ))}
    </>
  )
}
