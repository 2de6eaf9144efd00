/** What takes a text in lib/ and is not measured in tests/growth.release.test.ts, by the reason. */
export const others: Readonly<Record<string, string>> = {
  'an id, a key or a word of our own, which only names something': `
    book/database databaseBeside
    book/devices getDevice deleteDevice restoreDevice
    book/entries addEntry linesOf entryOfFill addSealed
    book/error refuse
    book/fills addFillLine endFill
    book/hpxml/xml childrenOf allAt
    book/jobs getJob deleteJob restoreJob saveJobSince
    book/journal/files putLines putBlob mergeFiles
    book/journal/give-back levelEntries isCopyName
    book/journal/keep openOf journalFillLine journalBlob
    book/journal/place databaseOf openJournal removeJournal
    book/journal/run alone
    book/journal/sources chosen
    book/json allEntries
    book/limits deleteLimit restoreLimit
    book/maps mapVersions deleteMap restoreMap
    book/notes addNote timeline wholeTimeline
    book/office fromOffice ownId
    book/others otherRecord nameOfBook renameOther putAwayOther putBeside
    book/reviews getReview saveReviewNotes closeReview
    book/search rowsDue rowsKeptTo
    book/series filledSoFar
    book/sound asideOf
    book/tombstones bury unbury
    form/dom is first all holdsSeveral byId
    form/far takeFrame farControl markFrames
    form/item-of itemOf
    form/labels labelsFor
    form/watch-roots watchRoots
    form/write/events listen send
    form/write/press keyDown keyUp keyPress strike
    form/write/steps stepTo
    job/cells nameOf unitAt
    job/empty emptyTest blankTest
    job/kept-limit setFrom ownLimitUnits
    job/next-house sameSetUp
    job/ranges readRanges
    job/units-by-place unitsByPlace
    units/convert convert unitsLike
    units/symbol symbol
    view/calculator/after-first-paint afterFirstPaint
    view/calculator/edits editTest editSheet neighbour
    view/calculator/report-files withReports
    view/calculator/role directionFor roleProblem
    view/calculator/trash takeFromTrash
    view/calculator/use-rested useRested
    view/calculator/verdict-lines withheldLines verdictLines
    view/book/download download downloadBlob
    view/book/form-draft readForm keepForm dropForm
    view/book/job-facts useJobFacts
    view/book/kept-limit-form figureWords
    view/book/known-items itemWords
    view/book/map-draft dropDraft
    view/book/open openSites openCalculator
    view/dock/mapping-marks mappingMarks
    view/figure/lines figureLine lacking
    view/figure/own togglePin movePin setDecimals
    view/helper/agent serve
    view/helper/frame-marks frameMarks
    view/helper/once once
    view/helper/place place
    view/helper/plan-marks planMarks receiptMarks
    view/helper/stage stage
    view/report/anchor newestFill
    view/report/basis basisOf`,
  'a sentence of our own, or a number in words': `
    view/book/source-words sourceWrite
    view/book/wording wording day dayAndYear time count
    view/calculator/reading besideCell wordReading
    view/calculator/readings-table readingsSummary
    view/dock/tick-words tickWords
    view/figure/formula runs typeset
    view/figure/lines minus
    view/report/several-words severalWords
    view/report/zone-words zoneWords`,
  'a message, held to its schema and its bounds before anything else': `
    background/bring-extra bringExtra
    background/docks admitDock
    background/fill-ports hearFillPort
    background/for-helper forHelper
    background/frames relay
    background/meet-all meetAll
    background/run-command runCommand
    background/suggestions answerSuggest
    book/answer answer
    book/fills startFill`,
  'an element that it writes into, a key or a change at a time': `
    form/constraint constraint
    form/handed-in handedIn
    form/write/calendar writeCalendar
    form/write/checkbox writeCheckbox
    form/write/chips writeChips
    form/write/combobox scrollThrough writeCombobox
    form/write/date-boxes writeDateBoxes
    form/write/date-sections writeDateSections
    form/write/date-time writeDateTime
    form/write/date writeDate
    form/write/events sendInput setValue
    form/write/file writeFile
    form/write/index write
    form/write/listbox writeListbox
    form/write/month writeMonth
    form/write/multiple writeMultiple
    form/write/number writeNumber
    form/write/radio writeRadio
    form/write/rich-text writeRichText
    form/write/select writeSelect
    form/write/slider writeSlider
    form/write/spinbutton writeSpinbutton
    form/write/text writeText
    form/write/time writeTime
    form/write/type typeKeys typeText typeInto
    form/write/whole setWhole
    form/write/without-focus writeWithoutFocus`,
  'elements, whose texts were cut when they were read: tests/browser measures the look at a page': `
    form/names sectionOf
    form/plan pick
    form/propose propose
    form/steps shownStep bindingsHere stepFor
    form/suggest-all suggesting`,
  'records and files as a whole, through what is measured here: the book is measured in tests/bench': `
    book/attachments typeOf asItIs attach keepBlob
    book/backup encrypted isBackup openBackup decrypted
    book/check check
    book/csv csvParts
    book/damaged misfit
    book/json openBookFile
    book/indexing markPlaces markMonths notFound
    book/review-file reviewParts withNotes
    book/reviews openReview
    book/sha256 sha256
    book/sound-rows isSound
    book/sound sound allSound
    job/material-figures figureItems
    job/material-zones zoneItems
    view/report/held heldContent sinceThen
    view/report/page-schema readPage`,
}

/** `folder/file name` of each. */
export const named: ReadonlySet<string> = new Set(
  Object.values(others).flatMap((list) =>
    list
      .trim()
      .split('\n')
      .flatMap((line) => {
        const [file, ...names] = line.trim().split(' ')
        return names.map((name) => `${file} ${name}`)
      }),
  ),
)
