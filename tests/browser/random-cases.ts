/** Seeded cases of messages, form maps and pages: what none of them may do is break, or enter anything wrong. */
import type { Browser } from 'puppeteer-core'
import { answerShape } from '../../lib/messages/message-shapes.ts'
import { answerSchema } from '../../lib/messages/answers.ts'
import { fromFramesSchema, toBackgroundSchema, toHelperSchema } from '../../lib/messages/messages.ts'
import { formMapSchema } from '../../lib/form/schema.ts'
import { fits } from '../../lib/messages/shape.ts'
import { toHelperShape } from '../heard.ts'
import { generator } from '../random.ts'
import { valueOf } from '../shape.ts'
import { Bench } from './isolated.ts'

/** Messages whole and spoilt: the helper's shape takes what the schema takes, and no schema throws. */
export function randomMessages(seed: number, count: number): string[] {
  const random = generator(seed)
  const wrong: string[] = []
  const schemas = [toHelperSchema, answerSchema, toBackgroundSchema, fromFramesSchema]
  const shapes = [toHelperShape, answerShape]
  for (let at = 0; at < count; at++) {
    const schema = schemas[at % 4]!
    const shape = shapes[at % 4]
    const message = valueOf(schema, random, at % 8 < 4 ? 0 : 0.04)
    const taken = schema.safeParse(message).success
    if (shape && fits(message, shape) !== taken)
      wrong.push(`message ${at} of seed ${seed}: schema and shape differ: ${JSON.stringify(message)}`)
  }
  return wrong
}

/** Form maps that the schema takes, planned on random pages. */
export async function randomMaps(browser: Browser, code: string, seed: number, count: number): Promise<string[]> {
  const random = generator(seed)
  const wrong: string[] = []
  const bench = await Bench.open(browser, code, '<!doctype html><body>')
  for (let at = 0; at < count; at += 200) {
    const maps = Array.from({ length: Math.min(200, count - at) }, () => valueOf(formMapSchema, random))
    const sound = maps.filter((map) => formMapSchema.safeParse(map).success)
    if (sound.length < maps.length)
      wrong.push(`${maps.length - sound.length} maps do not fit the schema they came from`)
    wrong.push(...(await bench.evaluate<string[]>(`bench.maps(${JSON.stringify(sound)}, ${seed + at})`)))
  }
  await bench.page.close()
  return wrong
}

/** Random pages that change while they are filled. */
export async function randomPages(browser: Browser, code: string, seed: number, count: number): Promise<string[]> {
  const wrong: string[] = []
  const bench = await Bench.open(browser, code, '<!doctype html><body>')
  for (let at = 0; at < count; at += 50)
    wrong.push(...(await bench.evaluate<string[]>(`bench.pages(${seed + at}, ${Math.min(50, count - at)})`)))
  await bench.page.close()
  return wrong
}
