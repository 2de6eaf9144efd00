import Inputmask from 'inputmask'
import { $ } from 'jquery'
import select2 from 'select2'
import 'select2/dist/css/select2.css'

document.body.innerHTML = `
  <form>
    <p><label for="street">Street address</label> <input id="street"></p>
    <p><label for="flow">CFM50</label> <input id="flow"></p>
    <p><label for="date">Test date</label> <input id="date" placeholder="mm/dd/yyyy"></p>
    <p><label for="phone">Phone</label> <input id="phone"></p>
    <p><label for="range">Range</label>
      <select id="range" style="width: 200px"><option value="">Select</option><option value="a">wide range</option><option value="b">middle range</option></select></p>
    <p><label for="town">Town</label>
      <select id="town" style="width: 200px"><option value="">Select</option>${Array.from({ length: 40 }, (_, at) => `<option value="${at + 1}">Town ${at + 1}</option>`).join('')}</select></p>
    <p><label><input type="checkbox" id="sealed"> Attic sealed</label></p>
  </form>`
Object.assign(window, { jQuery: $ })
if (typeof select2 === 'function') select2(window, $)
$('#range').select2({ minimumResultsForSearch: Infinity })
$('#town').select2()
Inputmask({ alias: 'numeric', groupSeparator: ',', digits: 1 }).mask('#flow')
Inputmask('datetime', { inputFormat: 'mm/dd/yyyy' }).mask('#date')
Inputmask('(999) 999-9999').mask('#phone')

const model: Record<string, unknown> = {}
$('input, select').on('change', (event: { target: HTMLInputElement }) => {
  const { target } = event
  model[target.id] = target.type === 'checkbox' ? target.checked : $(target).val()
})
window.pageState = () => ({ ...model })
