import '@yaireo/tagify/dist/tagify.css'
import 'flatpickr/dist/flatpickr.css'
import 'slim-select/styles'
import 'tom-select/dist/css/tom-select.default.css'
import Tagify from '@yaireo/tagify'
import AutoNumeric from 'autonumeric'
import flatpickr from 'flatpickr'
import SlimSelect from 'slim-select'
import TomSelect from 'tom-select'

document.body.innerHTML = `
  <form style="width: 460px; padding: 20px">
    <p><label for="flow">CFM50</label> <input id="flow"></p>
    <p><label for="volume">Volume</label> <input id="volume"></p>
    <p><label for="date">Test date</label> <input id="date" placeholder="MM/DD/YYYY"></p>
    <p><label for="permit">Date of permit</label> <input id="permit"></p>
    <p><label for="range">Range</label> <select id="range"><option value=""></option><option value="a">wide range</option><option value="b">middle range</option></select></p>
    <p><label for="places">Work locations</label> <select id="places" multiple><option value="attic">Attic</option><option value="crawl">Crawl space</option><option value="rim">Rim joist</option></select></p>
    <p><label for="zone">Zone</label> <select id="zone"><option data-placeholder="true"></option><option value="4">Zone 4</option><option value="5">Zone 5</option></select></p>
    <p><label for="words">Keywords</label> <input id="words"></p>
    <p><label for="crew">Crew</label> <input id="crew"></p>
  </form>`

const at = <E extends HTMLElement>(id: string) => document.getElementById(id) as E

const flow = new AutoNumeric(at<HTMLInputElement>('flow'), { decimalPlaces: 0 })
const volume = new AutoNumeric(at<HTMLInputElement>('volume'), { decimalPlaces: 0, suffixText: ' ft³' })
const date = flatpickr(at<HTMLInputElement>('date'), { dateFormat: 'm/d/Y', allowInput: true })
const permit = flatpickr(at<HTMLInputElement>('permit'), { altInput: true, altFormat: 'F j, Y', dateFormat: 'Y-m-d' })
const range = new TomSelect(at<HTMLSelectElement>('range'), {})
const places = new TomSelect(at<HTMLSelectElement>('places'), { plugins: ['remove_button'] })
const zone = new SlimSelect({ select: at<HTMLSelectElement>('zone') })
const words = new Tagify(at<HTMLInputElement>('words'))
const crew = new TomSelect(at<HTMLInputElement>('crew'), { create: true, persist: false })

const iso = (day: Date | undefined) =>
  day
    ? `${day.getFullYear()}-${String(day.getMonth() + 1).padStart(2, '0')}-${String(day.getDate()).padStart(2, '0')}`
    : ''

window.pageState = () => ({
  flow: flow.getNumber(),
  volume: volume.getNumber(),
  date: iso(date.selectedDates[0]),
  permit: iso(permit.selectedDates[0]),
  range: range.getValue(),
  places: places.getValue(),
  zone: zone.getSelected(),
  words: words.value.map(({ value }: { value: string }) => value),
  crew: crew.getValue(),
})
