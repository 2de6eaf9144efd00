/** What a binding writes, in words. */
import type { Source, Write } from '../../form/schema.ts'
import { symbol } from '../../units/symbol.ts'
import { itemWords, type KnownItems } from './known-items.ts'
import { count } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

export function sourceWords(source: Source, items: KnownItems): string {
  switch (source.from) {
    case 'item':
      return itemWords(source.item, items)
    case 'text':
      return source.text ? `“${source.text}”` : say`nothing`
    case 'file':
      return say`the file ${source.name}`
    case 'words':
      return source.parts.map((part) => ('text' in part ? part.text : `[${itemWords(part.item, items)}]`)).join('')
  }
}

const separators: Record<NonNullable<Write['grouping']>, string> = {
  '': say`no separator`,
  ',': say`separator ,`,
  '.': say`separator .`,
  ' ': say`separator space`,
  "'": say`separator ’`,
}

export function writeWords(write: Write): string {
  const words: string[] = []
  if (write.unit) words.push(symbol(write.unit))
  if (write.decimals !== undefined) words.push(count(write.decimals, 'decimal'))
  if (write.grouping !== undefined) words.push(separators[write.grouping])
  if (write.mark === ',') words.push(say`decimal comma`)
  if (write.rounding === 'half-even') words.push(say`half to even`)
  if (write.date) words.push(write.date)
  if (write.choices) words.push(count(Object.keys(write.choices).length, 'option'))
  return words.join(', ')
}

export function sourceWrite(source: Source): string {
  return source.from === 'item' ? writeWords(source.write) : ''
}
