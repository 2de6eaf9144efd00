/** What reads a text of a page or a file, by its file and name: tests/growth.release.test.ts measures each. */
import { DOMParser } from '@xmldom/xmldom'
import { bytesOfText } from '../lib/book/bytes-of-text.ts'
import { fromBase64, toBase64 } from '../lib/book/base64.ts'
import { whyNotKept } from '../lib/book/attachments.ts'
import { canonical } from '../lib/book/canonical.ts'
import { isEarlier } from '../lib/book/chain.ts'
import { sizeOf } from '../lib/book/check.ts'
import { readHpxml } from '../lib/book/hpxml/import.ts'
import { node, textAt, withAttribute, writeNode } from '../lib/book/hpxml/xml.ts'
import { startOf } from '../lib/book/indexing.ts'
import { linesOf } from '../lib/book/lines.ts'
import { checksum, fromLine, toLine } from '../lib/book/journal/line.ts'
import { readOffice } from '../lib/book/office.ts'
import { parseJson } from '../lib/book/parse-json.ts'
import { readReview } from '../lib/book/review-file.ts'
import { noDamage, readSealed, readWholeRecords } from '../lib/book/sealed.ts'
import { fold, searchable, soughtIn, stands, wordsOf } from '../lib/book/words.ts'
import { readSegmentName } from '../lib/book/shelf/segment.ts'
import { cut } from '../lib/bounds.ts'
import { csvCell, csvRows } from '../lib/csv.ts'
import { addressOf, matches, proposeAddress, serves, spanning } from '../lib/form/map/address.ts'
import { answersIn, apart, choose, chooseAmong } from '../lib/form/choose.ts'
import { ofSomeoneElse, ofTester, optionsAnswer } from '../lib/form/map/evidence.ts'
import { looksGenerated } from '../lib/form/page/clues.ts'
import { alphaOf } from '../lib/form/page/covers.ts'
import { datePart } from '../lib/form/page/date-part.ts'
import { isPattern, patternIn, readDate, writeDate } from '../lib/form/dates.ts'
import { contentOf, figuresCsv, readyFile, whyNoFile } from '../lib/form/fill/file.ts'
import { judge } from '../lib/form/fill/fill.ts'
import { fit } from '../lib/form/map/find.ts'
import { several } from '../lib/form/kind-traits.ts'
import { readAnyDate } from '../lib/form/kinds/calendar/read.ts'
import { partNumber } from '../lib/form/kinds/date-parts.ts'
import { inOwnNotation } from '../lib/form/fill/notation.ts'
import { alikeIn } from '../lib/form/fill/same-entry.ts'
import { sameness } from '../lib/form/same.ts'
import { suggestAll } from '../lib/form/map/suggest-all.ts'
import { suggest } from '../lib/form/map/suggest.ts'
import { sourceWords, textOf } from '../lib/form/fill/text.ts'
import { unitIn, unitsAgree, wholeUnit } from '../lib/form/map/unit-in.ts'
import {
  alike,
  asksAlike,
  contradict,
  gist,
  meansAlike,
  narrower,
  plain,
  saysMore,
  squeeze,
  tidy,
  words,
} from '../lib/form/words.ts'
import { cellValue, typedDecimals } from '../lib/job/cells.ts'
import { isDay } from '../lib/job/checks/calibration.ts'
import { demoJob } from '../lib/job/demo.ts'
import { choiceItem, dateItem, quantityItem, textItem, known } from '../lib/job/material-job.ts'
import { material } from '../lib/job/material.ts'
import { readFansPaste } from '../lib/job/paste-fans.ts'
import { columnOf, columnsOf, cut as cutLine, flowUnitOf, itemOf, tokens } from '../lib/job/paste-line.ts'
import { readPaste } from '../lib/job/paste.ts'
import { quote, readCell } from '../lib/job/read-cell.ts'
import { inOtherUnit } from '../lib/job/units.ts'
import { fits } from '../lib/messages/shape.ts'
import { marksOf } from '../lib/units/marks.ts'
import { numberIn, signOf } from '../lib/units/number-in.ts'
import { readNumber } from '../lib/units/read.ts'
import { bareName } from '../lib/view/book/beside-fields.tsx'
import { fileName } from '../lib/view/book/file-name.ts'
import { routeOf } from '../lib/view/book/route.ts'
import { sourceWords as sourceInWords } from '../lib/view/book/source-words.ts'
import { whyBarred } from '../lib/extension/page.ts'
import { isBlock } from '../lib/view/calculator/place-paste.ts'
import { stepped } from '../lib/view/calculator/stepped.ts'
import { boundTo } from '../lib/view/dock/describe.ts'
import { newFormMap } from '../lib/view/dock/new-form-map.ts'
import { asRead, inLocale, wordsInLocale } from '../lib/results/in-locale.ts'
import { nameLines } from '../lib/results/plot/bars.ts'
import { isOwnForm, isPractice } from '../lib/extension/practice.ts'
import { toKeep, toOpen } from '../lib/pdf/appearances.ts'
import { whyCut } from '../lib/pdf/fit.ts'
import { bursts, whyNot } from '../lib/pdf/look.ts'
import { bare, says } from '../lib/pdf/names.ts'
import { placeWords } from '../lib/view/parts/wording.ts'
import { nameFor } from '../lib/view/pdf-form/filing.ts'
import { shownOf } from '../lib/view/pdf-form/values.ts'
import { fakeField } from './pdf/fake.ts'
import { dayInWords } from '../lib/report/content.ts'
import { fakeClues } from './form/fake.ts'

const figures = material(demoJob(), [])
const none = { job: { id: 'j', name: 'j' }, items: {} }
const marks = { decimal: ',', group: '.' }

const parse = (text: string): Document =>
  new DOMParser({ onError: () => {} }).parseFromString(text, 'application/xml') as unknown as Document

const quietly = (work: () => unknown): unknown => {
  try {
    return work()
  } catch {
    // A refusal is an answer too.
    return undefined
  }
}

async function drained(from: AsyncIterable<unknown>): Promise<void> {
  try {
    for await (const _ of from);
  } catch {
    // So is one after some lines.
  }
}

const asFixed = (text: string, kind: Parameters<typeof fakeClues>[0] = {}) =>
  textOf({ from: 'text', text }, none, fakeClues(kind))

const address = (text: string) => `https://example.org/${encodeURI(text.toWellFormed())}`

export const readers: Readonly<Record<string, (text: string) => unknown>> = {
  'bounds cut': (text) => cut(text),
  'messages/shape fits': (text) => fits({ text: text.split(' ') }, { text: ['list', 's'] }),
  'csv csvCell': csvCell,
  'csv csvRows': (text) => csvRows([[text, text]]),
  'book/shelf/segment readSegmentName': readSegmentName,
  'form/words squeeze': squeeze,
  'form/words tidy': tidy,
  'form/words plain': plain,
  'form/words words': words,
  'form/words gist': gist,
  'form/words alike': (text) => alike(text, `${text} q`),
  'form/words contradict': (text) => contradict(text, `${text} 7 before`),
  'form/words asksAlike': (text) => asksAlike(text, `q ${text}`),
  'form/words meansAlike': (text) => meansAlike(text, `q ${text}`),
  'form/words narrower': (text) => narrower(text, `q ${text}`),
  'form/words saysMore': (text) => saysMore(text, `${text} q`),
  'form/map/address addressOf': (text) => addressOf(address(text)),
  'form/map/address proposeAddress': (text) => proposeAddress(address(text)),
  'form/map/address matches': (text) => matches(addressOf(address(text)), address(text)),
  'form/map/address serves': (text) => serves({ address: addressOf(address(text)) }, address(text)),
  'form/map/address spanning': (text) => spanning({ address: addressOf(address('a')) }, address(text)),
  'extension/practice isOwnForm': isOwnForm,
  'pdf/appearances toOpen': (text) => toOpen(bytesOfText(text)),
  'pdf/appearances toKeep': (text) => toKeep(bytesOfText(text), 5),
  'pdf/fit whyCut': (text) => whyCut(fakeField({ lines: true }), text, ({ length }) => length / 2),
  'pdf/look whyNot': (text) => whyNot(bytesOfText(`%PDF-1.7 ${text} startxref`)),
  'pdf/look bursts': (text) => bursts(bytesOfText(text)),
  'pdf/names bare': bare,
  'pdf/names says': (text) => says(text, `q ${text}`),
  'view/parts/wording placeWords': (text) => placeWords({ origin: text, path: text }),
  'view/pdf-form/filing nameFor': (text) => nameFor(text, text),
  'view/pdf-form/values shownOf': (text) => shownOf(fakeField({ kind: 'choice', several: true }), [], text),
  'form/page/clues looksGenerated': (text) => looksGenerated(text, `q ${text}`),
  'form/choose choose': (text) => choose('Yes', ['yes', text], [text, `${text} q`, 'q']),
  'form/choose choose among many': (text) => choose(text, [], text.split(/[ ;]/)),
  'form/page/covers alphaOf': alphaOf,
  'form/page/covers alphaOf a colour': (text) => alphaOf(`rgba(${text}`),
  'form/page/date-part datePart': (text) => datePart(text),
  'form/dates patternIn': patternIn,
  'form/dates isPattern': isPattern,
  'form/dates readDate': (text) => readDate(text, 'MM/dd/yyyy'),
  'form/dates writeDate': (text) => writeDate('2026-02-11', text),
  'form/kinds/calendar/read readAnyDate': (text) => readAnyDate(text, 'd.M.yyyy'),
  'form/kinds/date-parts partNumber': partNumber,
  'form/kind-traits several': several,
  'form/same sameness': (text) => sameness(text, ` ${text}1`),
  'form/fill/same-entry alikeIn a box': (text) => alikeIn('combobox', text, `${text} q`),
  'form/fill/same-entry alikeIn chips': (text) => alikeIn('chips', text, `${text} q`),
  'form/fill/same-entry alikeIn a list': (text) =>
    alikeIn('listbox', text, `${text}`.split(';').toReversed().join(';')),
  'form/fill/same-entry alikeIn an editor': (text) => alikeIn('rich-text', text, `${text} q`),
  'form/fill/fill judge': (text) => judge(text, '', `${text} q`, text, 'combobox'),
  'form/fill/notation inOwnNotation a number': (text) => inOwnNotation(`1${text}`, `1${text} ft`, { language: 'de' }),
  'form/fill/notation inOwnNotation a date': (text) => inOwnNotation(text, `${text} 2026`, { date: 'MM/dd/yyyy' }),
  'form/map/unit-in unitIn': unitIn,
  'form/map/unit-in wholeUnit': wholeUnit,
  'form/map/unit-in unitsAgree': (text) => unitsAgree({ kind: 'text', label: text, group: text, text }, text),
  'form/fill/text textOf a fixed text for a number': (text) => asFixed(text, { kind: 'number' }),
  'form/fill/text textOf a fixed text for a line': (text) => asFixed(text),
  'form/fill/text textOf a fixed text for a list': (text) => asFixed(text, { kind: 'select', options: [text] }),
  'form/fill/text textOf a fixed text for several': (text) => asFixed(text, { kind: 'multiple', options: ['q', 'r'] }),
  'form/fill/text sourceWords': (text) => sourceWords({ from: 'words', parts: [{ text }] }, none),
  'form/fill/file whyNoFile': (text) => whyNoFile({ from: 'file', name: 'a', type: 'b', bytes: text }, none),
  'form/fill/file readyFile': (text) => readyFile({ from: 'file', name: text, type: 'b', item: text }, none),
  'form/fill/file contentOf': (text) => quietly(() => contentOf({ from: 'file', name: text, type: 'b', text }, none)),
  'form/fill/file figuresCsv': (text) =>
    figuresCsv({ ...none, items: { a: { kind: 'text', label: text, group: text, text } } }),
  'form/map/find fit': (text) =>
    fit(
      fakeClues({ name: text, section: text, placeholder: text, options: [text], attributes: { name: text } }),
      fakeClues({ name: `q ${text}`, section: `q ${text}`, options: [`q ${text}`] }),
    ),
  'form/map/find fit by options': (text) =>
    fit(fakeClues({ options: text.split(/[ ;]/) }), fakeClues({ options: text.split(/[ ;]/).toReversed() })),
  'form/choose answersIn': (text) => answersIn([text, `${text} q`]),
  'form/choose apart': (text) => apart([text, `q ${text}`]),
  'form/choose apart of many': (text) => apart(text.split(/[ ;]/)),
  'form/choose chooseAmong': (text) => chooseAmong(text, [`q ${text}`, `${text} q`]),
  // Of a label and a heading, of which no more is held against a vocabulary.
  'form/map/evidence ofSomeoneElse': (text) => ofSomeoneElse('tester/name', text.slice(0, 200), text.slice(0, 200)),
  'form/map/evidence ofTester': (text) => ofTester(text.slice(0, 200)),
  'form/map/evidence optionsAnswer': (text) =>
    optionsAnswer('a', { kind: 'choice', label: text, group: '', value: '', options: [{ value: 'a', label: text }] }, [
      text,
      'q',
    ]),
  'form/map/suggest suggest': (text) =>
    suggest(fakeClues({ name: text, section: text, attributes: { name: text }, placeholder: text }), figures),
  'form/map/suggest-all suggestAll': (text) => suggestAll([fakeClues({ name: text, section: text })], none),
  'units/read readNumber': (text) => readNumber(text),
  'units/number-in numberIn': numberIn,
  'units/number-in signOf': signOf,
  'units/marks marksOf': (text) => marksOf([text]),
  'job/cells cellValue': (text) => cellValue(text, 'building.volume', 'ft3', {}),
  'job/cells typedDecimals': (text) => typedDecimals(text, 1),
  'job/checks/calibration isDay': isDay,
  'job/material-job textItem': (text) => textItem(text, text, text),
  'job/material-job dateItem': (text) => dateItem(text, text, text),
  'job/material-job choiceItem': (text) => choiceItem(text, text, text, [{ value: text, label: text }]),
  'job/material-job quantityItem': (text) => quantityItem('a', 'b', 'building.volume', text, 'ft3'),
  'job/material-job known': (text) => known({ [text]: undefined }),
  'job/paste-fans readFansPaste': (text) => readFansPaste(text, [{ reading: 'device' }, { reading: 'flow' }]),
  'job/paste-line flowUnitOf': flowUnitOf,
  'job/paste-line columnOf': columnOf,
  'job/paste-line columnsOf': (text) => columnsOf(text.split(' ')),
  'job/paste-line cut': (text) => cutLine(text, ';'),
  'job/paste-line itemOf': itemOf,
  'job/paste-line tokens': tokens,
  'job/paste readPaste': readPaste,
  'job/read-cell readCell': (text) => readCell(text, 'cfm'),
  'job/read-cell quote': quote,
  'job/units inOtherUnit': (text) => inOtherUnit(text, 'ft3', 'm3'),
  'book/base64 fromBase64': (text) => quietly(() => fromBase64(text)),
  'book/base64 toBase64': (text) => toBase64(bytesOfText(text)),
  'book/attachments whyNotKept': (text) => whyNotKept(text, bytesOfText(text).slice().buffer),
  'book/bytes-of-text bytesOfText': (text) => bytesOfText(text).length,
  'book/canonical canonical': (text) => canonical({ [text]: [text, 1.5] }),
  'book/chain isEarlier': (text) => isEarlier(text, `${text} q`),
  'book/check sizeOf': (text) => sizeOf({ [text]: text }),
  'book/hpxml/import readHpxml': (text) => quietly(() => readHpxml(text, [], parse)),
  'book/hpxml/import readHpxml inside': (text) =>
    quietly(() => readHpxml(`<HPXML schemaVersion="4.0"><a>${text}</a></HPXML>`, [], parse)),
  'book/hpxml/xml node': (text) => writeNode(node('a', text)!),
  'book/hpxml/xml withAttribute': (text) => writeNode(withAttribute('a', 'b', text)),
  'book/hpxml/xml textAt': (text) => quietly(() => textAt(parse(`<a><b>${text}</b></a>`).documentElement!, 'b')),
  'book/indexing startOf': startOf,
  'book/journal/line checksum': checksum,
  'book/journal/line toLine': (text) => toLine({ text }),
  'book/journal/line fromLine': (text) => quietly(() => fromLine(text)),
  'book/lines linesOf': (text) => drained(linesOf(new Blob([text]))),
  'book/office readOffice': (text) => readOffice({ maps: [text], limits: text }),
  'book/parse-json parseJson': (text) => quietly(() => parseJson(text)),
  'book/parse-json parseJson a text': (text) => quietly(() => parseJson(`{"a":"${text}`)),
  'book/review-file readReview': (text) => readReview(new Blob([text])).catch(() => undefined),
  'book/sealed readSealed': (text) => drained(readSealed(new Blob(['[\n', text]), ['entry'])),
  'book/sealed readWholeRecords': (text) => drained(readWholeRecords(new Blob(['[\n', text]), ['entry'], noDamage())),
  'book/words fold': fold,
  'book/words searchable': (text) => searchable([text, `${text} q`]),
  'book/words wordsOf': wordsOf,
  'book/words soughtIn': soughtIn,
  'book/words stands': (text) => stands('q')(text),
  'results/in-locale inLocale': (text) => inLocale(text, marks),
  'results/in-locale asRead': asRead,
  'results/in-locale marksOf': (text) => inLocale(text, marks),
  'results/in-locale wordsInLocale': (text) => wordsInLocale({ a: [text] }, 'es-ES'),
  'results/in-locale readingInLocale': (text) => wordsInLocale({ a: { b: text } }, 'es-ES'),
  'results/in-locale togetherInLocale': (text) => wordsInLocale([text], 'es-ES'),
  'results/plot/bars nameLines': nameLines,
  'extension/practice isPractice': isPractice,
  'report/content dayInWords': dayInWords,
  'view/book/beside-fields bareName': bareName,
  'view/book/file-name fileName': (text) => fileName(text, 'csv'),
  'view/book/route routeOf': routeOf,
  'view/book/source-words sourceWords': (text) => sourceInWords({ from: 'text', text }, new Map()),
  'extension/page whyBarred': (text) => whyBarred(address(text)),
  'view/calculator/place-paste isBlock': (text) => isBlock(text, 'pressure'),
  'view/calculator/stepped stepped': (text) => stepped(text, 1),
  'view/dock/describe boundTo': (text) => boundTo({ from: 'text', text }, none),
  'view/dock/new-form-map newFormMap': (text) => newFormMap(address(text), text),
}
