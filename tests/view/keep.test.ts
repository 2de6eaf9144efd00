import { expect, test } from 'vitest'
import { createKeeper } from '../../lib/view/calculator/keep.ts'

interface Draft {
  id: string
  text: string
}

/** A store whose writes end only when told. */
function slowStore() {
  const written: string[] = []
  const endings: ((fails?: Error) => void)[] = []
  const kept: number[] = []
  const failed: unknown[] = []
  const keeper = createKeeper<Draft>({
    id: (draft) => draft.id,
    save: (draft) =>
      new Promise<void>((resolve, reject) => {
        written.push(draft.id + draft.text)
        endings.push((fails) => (fails ? reject(fails) : resolve()))
      }),
    onKept: () => kept.push(written.length),
    onFailed: (error) => failed.push(error),
  })
  const end = async (fails?: Error) => {
    endings.shift()!(fails)
    await new Promise((resolve) => setTimeout(resolve))
  }
  return { keeper, written, end, kept, failed }
}

test('writes follow one another, and of those that wait only the last is written', async () => {
  const { keeper, written, end, kept } = slowStore()
  for (const text of ['1', '12', '123']) keeper.keep({ id: 'a', text })
  expect(written).toEqual(['a1'])
  await end()
  expect(written).toEqual(['a1', 'a123'])
  expect(kept).toEqual([])
  await end()
  expect(kept).toEqual([2])
})

test('a draft of one job does not push out the waiting draft of another', async () => {
  const { keeper, written, end } = slowStore()
  keeper.keep({ id: 'a', text: '1' })
  keeper.keep({ id: 'a', text: '2' })
  keeper.keep({ id: 'b', text: '1' })
  await end()
  await end()
  expect(written).toEqual(['a1', 'a2', 'b1'])
})

test('closing the page writes what waits without waiting', () => {
  const { keeper, written } = slowStore()
  keeper.keep({ id: 'a', text: '1' })
  keeper.keep({ id: 'a', text: '2' })
  keeper.flush()
  expect(written).toEqual(['a1', 'a2'])
})

test('a failed write is told, and the next one is still made', async () => {
  const { keeper, written, end, failed } = slowStore()
  keeper.keep({ id: 'a', text: '1' })
  keeper.keep({ id: 'a', text: '2' })
  await end(new Error('disk full'))
  expect(failed).toHaveLength(1)
  expect(written).toEqual(['a1', 'a2'])
})

test('a page that closes flushes twice, and the second time writes nothing older', async () => {
  const written: string[] = []
  const keeper = createKeeper<{ id: string; text: string }>({
    id: ({ id }) => id,
    save: () => new Promise(() => {}),
    saveAtOnce: async ({ text }) => written.push(text),
    onKept: () => {},
    onFailed: () => {},
  })
  keeper.keep({ id: 'a', text: '5' })
  keeper.keep({ id: 'a', text: '50' })
  keeper.flush()
  keeper.flush()
  expect(written).toEqual(['50'])
})
