/** Looks whether a file keeps to the facts of the standard: order, what is required, enumerations, numbers, references. */
import { namespace, schemaVersion } from '../../lib/book/hpxml/standard.ts'
import { childrenOf } from '../../lib/book/hpxml/xml.ts'
import { root, type Fact } from './hpxml-facts.ts'

interface Misfit {
  /** `HPXML/Building/BuildingID` */
  path: string
  message: string
}

const XML_NAME = /^[A-Za-z_][\w.-]*$/

class Checker {
  readonly misfits: Misfit[] = []
  readonly ids = new Set<string>()
  readonly references: { path: string; to: string }[] = []

  say(path: string, message: string): void {
    this.misfits.push({ path, message })
  }

  check(element: Element, fact: Fact, path: string): void {
    if (fact.open) return
    if (fact.attribute) this.attribute(element, fact.attribute, path)
    if (fact.children) this.children(element, fact.children, path)
    else if (childrenOf(element).length > 0) this.say(path, 'holds elements where none may stand')
    else this.text(element.textContent ?? '', fact, path)
  }

  private attribute(element: Element, name: 'id' | 'idref', path: string): void {
    const value = element.getAttribute(name) ?? ''
    if (!XML_NAME.test(value)) return this.say(path, `has no usable ${name}`)
    if (name === 'idref') this.references.push({ path, to: value })
    else if (this.ids.has(value)) this.say(path, `id ${value} stands twice`)
    this.ids.add(name === 'id' ? value : '')
  }

  private children(element: Element, facts: Readonly<Record<string, Fact>>, path: string): void {
    const names = Object.keys(facts)
    const seen = new Set<string>()
    let place = 0
    for (const child of childrenOf(element)) {
      const name = child.localName
      const at = `${path}/${name}`
      const fact = Object.hasOwn(facts, name) ? facts[name] : undefined
      if (!fact || child.namespaceURI !== namespace) {
        this.say(at, 'is not an element that may stand here')
        continue
      }
      if (names.indexOf(name) < place) this.say(at, `stands after ${names[place] ?? ''}, which it must precede`)
      else place = names.indexOf(name)
      if (seen.has(name) && !fact.many) this.say(at, 'stands more than once')
      seen.add(name)
      this.check(child, fact, at)
    }
    for (const [name, fact] of Object.entries(facts)) {
      if (fact.required && !seen.has(name)) this.say(`${path}/${name}`, 'is missing')
    }
  }

  private text(text: string, { oneOf, number, pattern }: Fact, path: string): void {
    if (oneOf && !oneOf.includes(text)) this.say(path, `“${text}” is none of: ${oneOf.join(', ')}`)
    if (pattern && !pattern.test(text)) this.say(path, `“${text}” has not the form that is asked`)
    if (!number) return
    const value = text.trim() === '' ? NaN : Number(text)
    const { above, least, whole } = number
    if (!Number.isFinite(value)) this.say(path, `“${text}” is not a number`)
    else if (above !== undefined && value <= above) this.say(path, `${text} is not more than ${above}`)
    else if (least !== undefined && value < least) this.say(path, `${text} is less than ${least}`)
    else if (whole && !Number.isInteger(value)) this.say(path, `${text} is not a whole number`)
  }
}

/** Everything in a document that does not keep to the facts in `hpxml-facts.ts`; nothing when it keeps to all. */
export function misfits(document: Document): Misfit[] {
  const element = document.documentElement
  const checker = new Checker()
  if (element.localName !== 'HPXML' || element.namespaceURI !== namespace) {
    return [{ path: element.localName, message: `is not HPXML in ${namespace}` }]
  }
  if (element.getAttribute('schemaVersion') !== schemaVersion) checker.say('HPXML', `is not version ${schemaVersion}`)
  checker.check(element, root, 'HPXML')
  for (const { path, to } of checker.references) {
    if (!checker.ids.has(to)) checker.say(path, `idref ${to} names nothing in the file`)
  }
  return checker.misfits
}
