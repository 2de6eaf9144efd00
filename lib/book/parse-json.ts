/** How deep brackets may stand in one another: no record of the book comes near it. */
const deepest = 100

/**
 * Whether brackets of a JSON text stand deeper in one another than any record's: a parser takes minutes over millions
 * of them. Takes time in proportion to the text's length.
 */
function tooDeep(json: string): boolean {
  if (hasFew(json)) return false
  let depth = 0
  for (let at = 0; at < json.length; at++) {
    const code = json.charCodeAt(at)
    if (code === 0x22) {
      at = endOfString(json, at)
    } else if (code === 0x5b || code === 0x7b) {
      if (++depth > deepest) return true
    } else if (code === 0x5d || code === 0x7d) depth--
  }
  return false
}

/** Whether a text has too few brackets to stand that deep, those in strings counted too. */
function hasFew(json: string): boolean {
  let left = deepest
  for (const bracket of ['{', '['])
    for (let at = json.indexOf(bracket); at >= 0; at = json.indexOf(bracket, at + 1)) if (--left < 0) return false
  return true
}

/** Where a string ends that begins at a place. */
function endOfString(json: string, start: number): number {
  for (let at = json.indexOf('"', start + 1); at >= 0; at = json.indexOf('"', at + 1)) {
    let marks = 0
    while (json[at - 1 - marks] === '\\') marks++
    if (marks % 2 === 0) return at
  }
  return json.length
}

/**
 * What a JSON text of a file holds.
 * @throws SyntaxError when it is none, or when its brackets stand too deep in one another
 */
export function parseJson(text: string): unknown {
  if (tooDeep(text)) throw new SyntaxError('The brackets stand too deep in one another.')
  return JSON.parse(text)
}
