import type { Page } from 'puppeteer-core'

/** A picture of what is in the window. A frame of another origin is drawn after its page: it is taken until two are the same. */
export async function stillPicture(page: Page): Promise<Buffer> {
  let [before, picture] = [Buffer.alloc(0), Buffer.from(await page.screenshot())]
  while (!picture.equals(before)) [before, picture] = [picture, Buffer.from(await page.screenshot())]
  return picture
}
