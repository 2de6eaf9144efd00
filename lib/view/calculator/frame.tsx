import { Icon } from '../parts/icons.tsx'

/** What stands in the page before the book is read: the same as in its HTML. */
export function Frame() {
  return (
    <div class="calc">
      <header class="bar-top">
        <div class="job">
          <Icon name="mark" />
        </div>
      </header>
    </div>
  )
}
