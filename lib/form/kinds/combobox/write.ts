/** Custom dropdowns: opened, searched or scrolled until the option shows, clicked; by keys when clicks do nothing. */
import { choose } from '../../choose.ts'
import type { Control } from '../../page/controls.ts'
import { faceOf } from '../../page/face.ts'
import { several } from '../../kind-traits.ts'
import { boxText } from './read.ts'
import { isOn } from '../tick.ts'
import { enter, leave, type Valued } from '../writing/events.ts'
import { choicesIn, scrollers, watchPopup, type Choice, type Watch } from '../writing/popup.ts'
import { press, strike } from '../writing/press.ts'
import { byHand, noOption } from '../writing/reasons.ts'
import { typeText } from '../writing/type.ts'
import { pause, until } from '../writing/wait.ts'
import { say } from '../../../words/say.ts'

const isField = (element: Element | null | undefined): element is HTMLInputElement =>
  element?.localName === 'input' && !(element as HTMLInputElement).readOnly

interface Fit extends Choice {
  popup: Element
}

function look(popups: readonly Element[], text: string): Fit | undefined {
  for (const popup of popups) {
    const choices = choicesIn(popup)
    const label = choose(text, [], [...new Set(choices.map((each) => each.label))])
    const found = choices.find((each) => each.label === label)
    if (found && found.element.getAttribute('aria-disabled') !== 'true') return { ...found, popup }
  }
  return undefined
}

function onward(scroller: Element): boolean {
  const before = scroller.scrollTop
  scroller.scrollTop += scroller.clientHeight * 0.8
  return scroller.scrollTop !== before
}

/** Goes through lists that mount only what is in view, to their ends; more may come there after a request. */
export async function scrollThrough(popups: Element[], text: string): Promise<Fit | undefined> {
  const end = Date.now() + 6000
  for (const scroller of popups.flatMap(scrollers)) {
    scroller.scrollTop = 0
    do {
      await pause(30)
      const found = look(popups, text)
      if (found) return found
    } while (Date.now() < end && (await until(() => onward(scroller), 400)))
  }
  return undefined
}

/** The field to search in: the control itself, or one in the list that it opened. */
function searchField(element: HTMLElement, watch: Watch): HTMLInputElement | undefined {
  if (isField(element)) return element
  const inside = element.querySelector('input:not([type=hidden])')
  if (isField(inside) && faceOf(inside)) return inside
  return watch
    .opened()
    .map((popup) => popup.querySelector('input[type=search], input[type=text], input:not([type])'))
    .find(isField)
}

const open = (watch: Watch): boolean => watch.opened().some((popup) => choicesIn(popup).length > 0)

async function openList(element: HTMLElement, watch: Watch): Promise<void> {
  enter(element)
  const face = isField(element) ? element : (faceOf(element) ?? element)
  press(face)
  if (await until(() => open(watch), 250)) return
  for (const key of ['ArrowDown', 'Enter', ' ']) {
    if (element.getAttribute('aria-expanded') !== 'true') strike(element, key)
    if (await until(() => open(watch), 150)) return
  }
}

async function findOption(element: HTMLElement, watch: Watch, text: string): Promise<Fit | undefined> {
  const first = look(watch.opened(), text)
  if (first) return first
  const field = searchField(element, watch)
  if (field) {
    if (field !== element) enter(field)
    await typeText(field as Valued, text)
  }
  // Options may come after a request.
  const patience = field ? 2500 : open(watch) ? 100 : 1500
  return (await until(() => look(watch.opened(), text), patience, 50)) ?? (await scrollThrough(watch.opened(), text))
}

/** Moves the list's own mark with the arrow keys until it stands on the option, then takes it. */
async function byKeys(element: HTMLElement, watch: Watch, text: string): Promise<void> {
  for (let count = 0; count < 300; count++) {
    const fit = look(watch.opened(), text)
    const active = element.getAttribute('aria-activedescendant')
    if (fit && active && (fit.element.id === active || fit.element.querySelector(`#${CSS.escape(active)}`))) {
      strike(element, 'Enter')
      return
    }
    strike(element, 'ArrowDown')
    await pause(5)
    if (element.getAttribute('aria-activedescendant') === active && count > 2) return
  }
}

const shows = (control: Control, label: string): boolean => {
  const now = boxText(control.element)
  return now === label || choose(label, [], [now]) !== undefined
}

/** Lets a box that takes texts of one's own take this one, by Enter; never while Enter would choose something else. */
async function takeOwn(element: HTMLElement, watch: Watch, text: string): Promise<boolean> {
  if (!isField(element) || element.value !== text) return false
  const choices = watch.opened().flatMap(choicesIn)
  const offers = ({ label }: Choice) => label.includes(text) || /^(no |nothing|type )/i.test(label)
  if (!choices.every(offers)) return false
  strike(element, 'Enter')
  return (await until(() => element.value === '' && boxText(element).includes(text), 500)) ?? false
}

/** Makes the choices of a list that takes several just the wanted ones, as far as the list shows them. */
async function chooseSeveral(
  { element }: Control,
  watch: Watch,
  wanted: readonly string[],
): Promise<string | undefined> {
  // What was typed to find an option is not chosen yet.
  const searching = () => isField(element) && element.value !== ''
  const has = ({ element: option, label }: Choice) => isOn(option) || (!searching() && boxText(element).includes(label))
  for (const text of wanted) {
    if (!open(watch)) await openList(element, watch)
    const fit = await findOption(element, watch, text)
    if (!fit) {
      if (await takeOwn(element, watch, text)) continue
      return noOption(text)
    }
    if (has(fit)) continue
    press(fit.element)
    if (!(await until(() => has(fit), 1500))) return byHand
    await pause(20)
  }
  // Some lists mark the option that the keys stand on as if it were chosen: the box shows only what is.
  const shownAs = (label: string) =>
    boxText(element).includes(label) || !wanted.some((each) => boxText(element).includes(each))
  const extra = () =>
    watch
      .opened()
      .flatMap(choicesIn)
      .find(({ element: option, label }) => isOn(option) && shownAs(label) && choose(label, [], wanted) === undefined)
  // In a list of one choice a click on the chosen option leaves it chosen.
  for (let more = extra(), last = ''; more && more.label !== last; more = extra()) {
    last = more.label
    press(more.element)
    await pause(30)
    if (!open(watch)) await openList(element, watch)
  }
  return undefined
}

function close(element: HTMLElement, watch: Watch): void {
  if (element.getAttribute('aria-expanded') === 'true' || open(watch)) strike(element, 'Escape')
  // A list that stands elsewhere in the page hears only the keys in it, and would lie over what comes next.
  for (const popup of watch.opened()) if (choicesIn(popup).length > 0) strike(popup, 'Escape')
  leave(element)
}

export async function writeCombobox(control: Control, text: string): Promise<string | undefined> {
  const { element } = control
  const before = isField(element) ? element.value : ''
  const watch = watchPopup(element)
  try {
    const wanted = several(text)
    if (text === '') {
      if (boxText(element) !== before || !isField(element)) {
        await openList(element, watch)
        await chooseSeveral(control, watch, [])
        if (boxText(element) === '') return undefined
      }
      if (!isField(element)) return say`a choice cannot be emptied again: set it by hand`
      enter(element)
      await typeText(element, '')
      return undefined
    }
    await openList(element, watch)
    if (wanted.length > 1 && !look(watch.opened(), text)) return await chooseSeveral(control, watch, wanted)
    const fit = await findOption(element, watch, text)
    if (!fit) {
      const free =
        isField(element) && /^(list|both)$/.test(element.getAttribute('aria-autocomplete') ?? '') && !open(watch)
      if (free && element.value === text) return undefined
      if (isField(element) && element.value !== before) await typeText(element, before)
      return noOption(text)
    }
    press(fit.element)
    if (await until(() => shows(control, fit.label), 500)) return undefined
    // Where the choice was taken, or the list has gone, keys would change something else: it is read as it is.
    if (isOn(fit.element) || !open(watch)) return undefined
    await byKeys(element, watch, text)
    return (await until(() => shows(control, fit.label), 500)) ? undefined : byHand
  } finally {
    close(element, watch)
    // Some take the focus back as they go.
    await until(() => !open(watch), 500)
    watch.stop()
  }
}
