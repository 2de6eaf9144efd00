/** Every language has every text; what is missing is listed with its key, as `npm run words` does. */
import { expect, test } from 'vitest'
import { english, kept, languages, read } from '../../lib/words/collect.ts'

test.each(languages())('%s holds every text', (language) => {
  expect(kept(english(), read(language)).missing).toEqual([])
})
