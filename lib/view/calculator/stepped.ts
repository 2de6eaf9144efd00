import { readNumber } from '../../units/read.ts'

/** A cell's number one step up or down, with as many decimals as it has; what is no number stays as typed. */
export function stepped(text: string, by: number): string {
  if (text.trim() === '') return String(by)
  const value = readNumber(text.trim())
  if (typeof value !== 'number') return text
  const decimals = /[.,](\d{1,6})$/.exec(text.trim())?.[1]?.length ?? 0
  return (value + by).toFixed(decimals)
}
