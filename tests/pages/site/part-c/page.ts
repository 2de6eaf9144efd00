import { escape, layout } from '../layout.ts'
import type { Field } from '../field.ts'
import { sections } from './fields.ts'

function control(field: Field): string {
  const id = escape(field.name)
  const common = `id="${id}" name="${id}"${field.hint === undefined ? '' : ` aria-describedby="${id}-hint"`}`
  const longest = field.maxLength === undefined ? '' : ` maxlength="${field.maxLength}"`
  const value = escape(field.value ?? '')
  switch (field.kind) {
    case 'select':
      return `<select ${common}><option value="">Select</option>${(field.options ?? [])
        .map((option) => `<option value="${escape(option.value)}">${escape(option.label)}</option>`)
        .join('')}</select>`
    case 'textarea':
      return `<textarea ${common}${longest} rows="3">${value}</textarea>`
    case 'number':
      return `<input type="number" ${common} step="${field.step ?? '1'}" value="${value}" />`
    case 'text':
    case 'date':
      return `<input type="${field.kind}" ${common}${longest} value="${value}" autocomplete="off" />`
    default:
      throw new Error(`A ${field.kind} is not laid out here.`)
  }
}

function radios(field: Field): string {
  const id = escape(field.name)
  const choices = (field.options ?? []).map(
    (option) =>
      `<label class="choice"><input type="radio" name="${id}" value="${escape(option.value)}" /> ${escape(option.label)}</label>`,
  )
  return `<div class="field"><fieldset class="group"><legend>${escape(field.label)}</legend>
    <div class="choices">${choices.join('')}</div></fieldset></div>`
}

function block(field: Field): string {
  const id = escape(field.name)
  if (field.kind === 'radio') return radios(field)
  if (field.kind === 'checkbox')
    return `<div class="field"><label class="choice"><input type="checkbox" id="${id}" name="${id}" /> ${escape(field.label)}</label></div>`
  const hint = field.hint === undefined ? '' : `<p class="hint" id="${id}-hint">${escape(field.hint)}</p>`
  return `<div class="field${field.kind === 'textarea' ? ' wide' : ''}"><label for="${id}">${escape(field.label)}</label>
    ${control(field)}${hint}<p class="complaint" hidden></p></div>`
}

/** The page of form LC-7, part C, for one application. */
export function partC(application: string): string {
  const fieldsets = sections(application).map(
    (section) => `<fieldset class="section"><legend>${escape(section.legend)}</legend>
      <div class="grid">${section.fields.map((field) => block(field)).join('\n')}</div></fieldset>`,
  )
  return layout({
    title: 'Draught-proofing rebate, form LC-7',
    lead: 'Part C: test results. Part 3 of 5. Save before you continue.',
    script: '/part-c/check.js',
    main: `<form method="post" novalidate>
      <input type="hidden" name="token" value="5f1c" />
      ${fieldsets.join('\n')}
      <fieldset class="section"><legend>Attachments and signature</legend>
        <div class="grid">
          <div class="field"><label for="report">Signed test report</label><input type="file" id="report" name="report" /></div>
          <div class="field"><label class="choice"><input type="checkbox" id="certify" name="certify" /> I certify that the above is true</label></div>
          <div class="field"><label for="signature">Signature, full name</label><input type="text" id="signature" name="signature" autocomplete="off" /></div>
        </div>
      </fieldset>
      <p class="actions"><button type="submit">Save and continue</button> <a href="/">Back to part B</a></p>
      <p class="saved" role="status"></p>
    </form>`,
  })
}
