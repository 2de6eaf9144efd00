/** A page that tries every way of reading on plan after plan. */
import { generator } from '../random.ts'
import { attack } from './hostile.ts'
import { ManyPlans } from './many-plans.ts'

interface Read {
  found: string[]
  read: string
}

/** Letters of one width in the font of the plan, so that every plan is laid out alike. */
const letters = 'bdhknpquvxyz0123456789'

/** The dock's own words: a page that reads any of them has got in. */
const own = ['to enter', 'Nothing is typed', 'Text to enter', 'There now', 'Copy list']

/**
 * Shows plans with random texts and lets the page read. What it comes to know must hold none of the texts, and be the same
 * for every plan: else it hangs on what is shown.
 * @returns a sentence for each plan of which the page learnt something
 */
export async function readPlans(seed: number, count: number, log?: (done: number) => void): Promise<string[]> {
  const random = generator(seed)
  const text = (length: number) => Array.from({ length }, () => letters[Math.floor(random() * letters.length)]).join('')
  const many = new ManyPlans()
  const wrong: string[] = []
  let first: string | undefined
  try {
    await many.start('finds')
    for (let at = 0; at < count; at++) {
      const texts = many.controls.map((name) => (/date/i.test(name) ? dateOf(random) : text(9)))
      const job = text(12)
      await many.show(texts, job)
      await many.ui.key('Tab')
      const secrets = [...texts, job]
      const { found, read } = (await attack(many.page, [...secrets, ...own])) as Read
      const heard = JSON.stringify(await many.page.evaluate('heard()'))
      const all = `${read}\n${heard}`
      for (const secret of [...secrets, ...own])
        if (found.includes(secret) || all.includes(secret)) wrong.push(`plan ${at}: the page knows “${secret}”`)
      // The first plans come while the dock is still laid out.
      if (at === 2) first = all
      if (at > 2 && all !== first) wrong.push(`plan ${at}: the page reads otherwise: ${difference(first ?? '', all)}`)
      log?.(at + 1)
    }
  } finally {
    await many.close()
  }
  return wrong
}

const dateOf = (random: () => number): string => {
  const two = (most: number) => String(1 + Math.floor(random() * most)).padStart(2, '0')
  return `20${10 + Math.floor(random() * 80)}-${two(12)}-${two(28)}`
}

function difference(one: string, other: string): string {
  let at = 0
  while (at < one.length && one[at] === other[at]) at++
  return `${one.slice(at, at + 80)} | ${other.slice(at, at + 80)}`
}
