/** <gapsum-widget>: the calculator as an element of any page, and a control of any form. */
import { h, render } from 'preact'
import type { Device, Job } from '../job/schema.ts'
import type { View } from '../view/calculator/context.ts'
import { compute, type Computed } from './compute.ts'
import { readSources, writeTargets } from './host-fields.ts'
import { attributes, plainOptions, propertyOf, readAttribute } from './options.ts'
import { styleSheet } from './style.ts'
import { themeOf } from './theme.ts'
import { decide, initialJob, typedOf, withTyped } from './typed.ts'
import type { Entered, Options, Outcome, Prefill, Typed } from './types.ts'
import { validityOf } from './validity.ts'
import { WidgetView } from './view.tsx'
import { writtenTexts } from './written.ts'
import { language, say } from '../words/say.ts'

/** A server has no elements: there the class can be imported, and nothing more. The options are put onto its prototype. */
const Base = (globalThis.HTMLElement ?? Object) as unknown as new () => HTMLElement & Options

/** Up to so many points are computed within a keystroke; beyond, when typing rests. */
const atOnce = 300
const rest = 200

export class GapsumWidget extends Base {
  static readonly formAssociated = true
  static readonly observedAttributes: readonly string[] = [...propertyOf.keys(), 'name', 'required']

  readonly #internals = this.attachInternals()
  readonly #root = this.attachShadow({ mode: 'open', delegatesFocus: true })
  readonly #mount: HTMLElement
  /** What properties were set to; they go before attributes. */
  readonly #set: Partial<Options> = {}
  #options = plainOptions()
  #devices: readonly Device[] = []
  #job: Job = initialJob(this.#options)
  #computed: Computed | undefined
  #touched = false
  #disabled = false
  #custom = ''
  #open: Record<string, boolean> = { building: true, readings: true, figures: true }
  #connected: AbortController | undefined
  #stale = false
  #timer: ReturnType<typeof setTimeout> | undefined
  #writing: ReturnType<typeof setTimeout> | undefined
  #changed = ''

  constructor() {
    super()
    this.#root.adoptedStyleSheets = [styleSheet()]
    this.#mount = this.ownerDocument.createElement('div')
    this.#mount.className = 'root'
    this.#mount.setAttribute('part', 'root')
    // The language of the words, wherever the page is from.
    this.#mount.lang = language()
    this.#mount.dir = 'ltr'
    this.#root.append(this.#mount)
    // What is typed is told by events of the widget's own, after it was computed.
    for (const type of ['input', 'change']) this.#mount.addEventListener(type, (event) => event.stopPropagation())
    this.#mount.addEventListener('change', () => this.#tellChange())
    this.#internals.role = 'group'
    this.#internals.ariaLabel = say`Air-leakage calculator`
  }

  /** The inputs as typed. Setting it writes over the inputs that it names. */
  get value(): Typed {
    return typedOf(this.#job)
  }
  set value(patch: Prefill) {
    this.#touched = true
    this.#job = decide(withTyped(this.#job, patch ?? {}, this.#options.locale), this.#options)
    this.#follow()
  }

  /** The readings as numbers; undefined while no row is complete. */
  get sheet(): Outcome['sheet'] {
    return this.#now().sheet
  }
  get report(): Outcome['report'] {
    return this.#now().report
  }
  get verdict(): Outcome['verdict'] {
    return this.#now().verdict
  }
  /** By submitted name: the figures as written. */
  get texts(): Outcome['texts'] {
    return writtenTexts(this.report, this.#options.names)
  }

  /** Flow devices whose ranges reduce readings at the device. */
  get devices(): readonly Device[] {
    return this.#devices
  }
  set devices(devices: readonly Device[]) {
    this.#devices = devices ?? []
    this.#follow()
  }

  get name(): string {
    return this.getAttribute('name') ?? ''
  }
  set name(name: string) {
    this.setAttribute('name', name)
  }
  get required(): boolean {
    return this.hasAttribute('required')
  }
  set required(required: boolean) {
    this.toggleAttribute('required', required)
  }
  get disabled(): boolean {
    return this.hasAttribute('disabled')
  }
  set disabled(disabled: boolean) {
    this.toggleAttribute('disabled', disabled)
  }
  get type(): string {
    return this.localName
  }
  get form(): HTMLFormElement | null {
    return this.#internals.form
  }
  get labels(): NodeList {
    return this.#internals.labels
  }
  get validity(): ValidityState {
    this.#now()
    return this.#internals.validity
  }
  get validationMessage(): string {
    this.#now()
    return this.#internals.validationMessage
  }
  get willValidate(): boolean {
    return this.#internals.willValidate
  }
  checkValidity(): boolean {
    this.#now()
    return this.#internals.checkValidity()
  }
  reportValidity(): boolean {
    this.#now()
    return this.#internals.reportValidity()
  }
  /** A reason of the page's own why the inputs will not do; empty: none. */
  setCustomValidity(message: string): void {
    this.#custom = message
    this.#judge()
  }

  /** Back to what the inputs began with. */
  reset(): void {
    this.#touched = false
    this.#begin()
  }

  /** Writes the figures into the host's fields of `targets` now. */
  async enterFigures(): Promise<Entered[]> {
    const lines = await writeTargets(this, this.#options.targets, this.report)
    this.dispatchEvent(new CustomEvent('gapsum-entered', { detail: lines, bubbles: true, composed: true }))
    return lines
  }

  connectedCallback(): void {
    // Properties that were set before the element was defined are own values that hide the accessors.
    for (const key of [...propertyOf.values(), 'value', 'devices'] as const) {
      if (!Object.hasOwn(this, key)) continue
      const early = (this as Record<string, unknown>)[key]
      delete (this as Record<string, unknown>)[key]
      ;(this as Record<string, unknown>)[key] = early
    }
    const { signal } = (this.#connected = new AbortController())
    const root = this.getRootNode()
    const sourced = (event: Event) => {
      if (event.target !== this && Object.keys(this.#options.sources).length > 0) this.#readHost()
    }
    root.addEventListener('input', sourced, { signal })
    root.addEventListener('change', sourced, { signal })
    root.addEventListener('submit', () => this.#now(), { capture: true, signal })
    // The form resets its own fields after this event.
    root.addEventListener('reset', () => setTimeout(() => this.#connected && this.#readHost()), { signal })
    this.addEventListener(
      'focusout',
      (event) => {
        if (event.relatedTarget instanceof Node && this.contains(event.relatedTarget)) return
        this.#now()
        this.#enterSoon()
      },
      { signal },
    )
    for (const query of ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'])
      matchMedia(query).addEventListener('change', () => this.#paint(), { signal })
    this.#options = this.#gather()
    if (!this.#touched) this.#job = initialJob(this.#options)
    this.#readHost(false)
    this.#follow()
  }

  disconnectedCallback(): void {
    this.#connected?.abort()
    this.#connected = undefined
    clearTimeout(this.#timer)
    clearTimeout(this.#writing)
    render(null, this.#mount)
  }

  attributeChangedCallback(attribute: string): void {
    if (!this.#connected) return
    if (propertyOf.has(attribute)) this.#adopt()
    else this.#follow()
  }

  formResetCallback(): void {
    this.reset()
  }

  formDisabledCallback(disabled: boolean): void {
    this.#disabled = disabled
    this.#paint()
  }

  formStateRestoreCallback(state: unknown): void {
    if (typeof state !== 'string') return
    try {
      this.value = JSON.parse(state) as Prefill
    } catch {
      // A state that an earlier version kept is laid aside.
    }
  }

  /** Takes an option from a script; `undefined` gives it back to its attribute. */
  protected choose(property: keyof Options, value: unknown): void {
    if (value === undefined) delete this.#set[property]
    else (this.#set as Record<string, unknown>)[property] = value
    if (this.#connected) this.#adopt()
  }

  protected chosen(property: keyof Options): unknown {
    const [attribute] = attributes[property]
    return this.#set[property] ?? readAttribute(property, this.getAttribute(attribute) ?? '')
  }

  #gather(): Options {
    return Object.fromEntries([...propertyOf.values()].map((key) => [key, this.chosen(key)])) as unknown as Options
  }

  /** Changed options: a test that nobody has touched begins anew, another is kept and follows what is decided. */
  #adopt(): void {
    this.#options = this.#gather()
    if (this.#touched) {
      this.#job = decide(this.#job, this.#options)
      this.#readHost(false)
      this.#follow()
    } else this.#begin()
  }

  #begin(): void {
    this.#job = initialJob(this.#options)
    this.#readHost(false)
    this.#follow()
  }

  #readHost(follow = true): void {
    const found = readSources(this, this.#options.sources)
    if (Object.keys(found).length === 0) return
    this.#job = withTyped(this.#job, found, this.#options.locale)
    if (follow) this.#follow()
  }

  #edit = (change: (job: Job) => Job): void => {
    this.#touched = true
    this.#job = change(this.#job)
    if ((this.#job.tests[0]?.sheet.points.length ?? 0) > atOnce) {
      this.#stale = true
      this.#paint()
      clearTimeout(this.#timer)
      this.#timer = setTimeout(() => this.#follow(), rest)
    } else this.#follow()
    this.dispatchEvent(new Event('input', { bubbles: true, composed: true }))
  }

  /** What the inputs come to. A long log that waits is computed now, and the form told: it must not send what was before. */
  #now(): Computed {
    if (this.#stale) this.#follow()
    else if (!this.#computed) this.#compute()
    return this.#computed!
  }

  #compute(): void {
    this.#stale = false
    clearTimeout(this.#timer)
    this.#computed = compute(this.#job, this.#devices, this.#options)
  }

  /** Computes, draws, judges and tells. */
  #follow(): void {
    this.#compute()
    if (!this.#connected) return
    this.#paint()
    this.#submit()
    this.#judge()
    const detail: Outcome = {
      value: this.value,
      sheet: this.sheet,
      report: this.report,
      verdict: this.verdict,
      withheld: this.#now().withheld?.withheld,
      texts: this.texts,
      valid: this.#internals.validity.valid,
    }
    this.dispatchEvent(new CustomEvent('gapsum-report', { detail, bubbles: true, composed: true }))
    if (!this.matches(':focus-within')) this.#enterSoon()
  }

  #submit(): void {
    const data = new FormData()
    for (const [name, text] of Object.entries(this.texts)) data.append(name, text)
    const { sheet, report } = this.#now()
    if (this.name !== '' && report) data.append(this.name, JSON.stringify({ sheet, figures: report.figures }))
    this.#internals.setFormValue(data, JSON.stringify(this.value))
  }

  #judge(): void {
    const { reading } = this.#now()
    const asked = { ...this.#options, required: this.required, custom: this.#custom }
    const { flags, message } = validityOf(this.#now(), asked)
    const anchor =
      this.#mount.querySelector<HTMLElement>('[aria-invalid], input:not([readonly]), select') ?? this.#mount
    this.#internals.setValidity(flags, message, anchor)
    const states = this.#internals.states
    const verdict = this.verdict
    for (const [state, on] of [
      ['meets', verdict?.meets === true],
      ['misses', verdict?.meets === false],
      ['doubtful', reading.counts.bad + reading.counts.doubtful > 0],
    ] as const) {
      if (on) states?.add(state)
      else states?.delete(state)
    }
  }

  #tellChange(): void {
    const now = JSON.stringify(this.value)
    if (now === this.#changed) return
    this.#changed = now
    this.dispatchEvent(new Event('change', { bubbles: true }))
  }

  /** Once the focus has settled somewhere else: never while the person types here. */
  #enterSoon(): void {
    if (Object.keys(this.#options.targets).length === 0) return
    clearTimeout(this.#writing)
    this.#writing = setTimeout(() => {
      if (this.#connected && !this.matches(':focus-within')) void this.enterFigures()
    })
  }

  #paint(): void {
    if (!this.#connected || !this.#computed) return
    const theme = themeOf(this, this.#options.theme)
    if (theme === 'auto') delete this.#mount.dataset['theme']
    else this.#mount.dataset['theme'] = theme
    const view: View = {
      isOpen: (section) => this.#open[section] ?? false,
      setOpen: (section, open) => {
        this.#open = { ...this.#open, [section]: open }
        this.#paint()
      },
    }
    const props = {
      job: this.#job,
      computed: this.#computed,
      options: this.#options,
      devices: this.#devices,
      disabled: this.#disabled,
      view,
      onEdit: this.#edit,
    }
    render(h(WidgetView, props), this.#mount)
  }
}

for (const property of propertyOf.values()) {
  Object.defineProperty(GapsumWidget.prototype, property, {
    configurable: true,
    enumerable: true,
    get(this: GapsumWidget) {
      return this['chosen'](property)
    },
    set(this: GapsumWidget, value: unknown) {
      this['choose'](property, value)
    },
  })
}

/** Makes the element known to the page; on a server, and when it is known already, nothing happens. */
export function defineWidget(tag = 'gapsum-widget'): void {
  if (globalThis.customElements && !customElements.get(tag)) customElements.define(tag, GapsumWidget)
}
