/** What takes a text in lib/ and is not measured in tests/growth.release.test.ts, by the reason. */
export const others: Readonly<Record<string, string>> = {
  'an id, a key or a word of our own, which only names something': `
    book/database databaseBeside
    book/devices getDevice deleteDevice restoreDevice
    book/entries addEntry linesOf entryOfFill addSealed
    book/error refuse
    book/fills addFillLine endFill
    book/hpxml/xml childrenOf allAt
    book/import-others commonPart
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
    form/page/dom is first all holdsSeveral byId
    form/page/flat flatAll
    form/page/names named
    form/page/far takeFrame farControl markFrames
    form/item-of itemOf
    form/page/labels labelsFor
    form/page/watch-roots watchRoots
    form/kinds/writing/events listen send
    form/kinds/writing/press keyDown keyUp keyPress strike
    form/kinds/writing/steps stepTo
    job/cells nameOf unitAt
    job/empty emptyTest blankTest
    job/kept-limit setFrom ownLimitUnits
    job/next-house sameSetUp
    job/ranges readRanges
    job/units-by-place unitsByPlace
    units/convert convert unitsLike
    units/symbol symbol
    view/calculator/after-first-paint afterFirstPaint
    job/edits editTest editSheet neighbour
    report/report-files withReports
    view/calculator/role directionFor roleProblem
    view/calculator/trash takeFromTrash
    view/calculator/use-rested useRested
    results/verdict-lines withheldLines verdictLines
    view/book/download download
    view/book/form-draft readForm keepForm dropForm
    view/book/job-facts useJobFacts
    view/book/kept-limit-form figureWords
    view/book/known-items itemWords
    view/book/map-draft dropDraft
    extension/open-book openSites openCalculator
    view/dock/mapping-marks mappingMarks
    view/dock/proposals proposalsFor proposalsForAll
    results/lines figureLine lacking
    results/own togglePin movePin setDecimals
    view/helper/agent serve
    view/helper/frame-marks frameMarks
    view/helper/keep-moved keepMoved
    view/helper/once once
    view/helper/place place
    view/helper/plan-marks planMarks receiptMarks
    view/helper/stage stage
    report/anchor newestFill
    report/basis basisOf`,
  'a sentence of our own, or a number in words': `
    view/helper/hear-tasks hearTasks
    view/book/source-words sourceWrite
    view/parts/wording wording day dayAndYear time count
    results/reading besideCell wordReading
    view/calculator/readings-table readingsSummary
    view/dock/tick-words tickWords
    view/figure/formula runs typeset
    results/lines minus
    results/words-after wordsAfter
    results/verdict-lines unitOf
    form/kinds/writing/reasons noOption isNoOption
    report/several-words severalWords
    report/zone-words zoneWords`,
  'a message, held to its schema and its bounds before anything else': `
    extension/bring-extra bringExtra
    extension/docks admitDock
    extension/fill-ports hearFillPort
    extension/for-helper forHelper
    extension/frames relay
    extension/meet-all meetAll
    extension/run-command runCommand
    extension/suggestions answerSuggest
    extension/answer answer
    book/fills startFill`,
  'an element that it writes into, a key or a change at a time': `
    form/page/constraint constraint
    form/page/date-part partOf
    form/page/handed-in handedIn
    form/kinds/calendar/write writeCalendar
    form/kinds/checkbox/write writeCheckbox
    form/kinds/chips/write writeChips
    form/kinds/combobox/write scrollThrough writeCombobox
    form/kinds/date-boxes/write writeDateBoxes
    form/kinds/date-sections/write writeDateSections
    form/kinds/date-time/write writeDateTime
    form/kinds/date/write writeDate
    form/kinds/writing/events askBefore sendInput setValue
    form/kinds/file/write writeFile
    form/kinds/write write
    form/kinds/listbox/write writeListbox
    form/kinds/month/write writeMonth
    form/kinds/multiple/write writeMultiple
    form/kinds/number/write writeNumber
    form/kinds/radio/write writeRadio
    form/kinds/rich-text/write writeRichText
    form/kinds/select/write writeSelect
    form/kinds/slider/write writeSlider
    form/kinds/spinbutton/write writeSpinbutton
    form/kinds/text/write writeText
    form/kinds/time/write writeTime
    form/kinds/writing/type typeKeys typeText typeInto
    form/kinds/writing/whole setWhole
    form/kinds/writing/without-focus writeWithoutFocus`,
  'elements, whose texts were cut when they were read: tests/browser measures the look at a page': `
    form/page/names sectionOf
    form/fill/notation notationOf
    form/fill/plan pick movedTo
    form/map/propose propose
    form/map/steps shownStep bindingsHere stepFor
    form/map/suggest-all suggesting`,
  'records and files as a whole, through what is measured here: the book is measured in tests/bench': `
    pdf/open begin openForm
    view/pdf-form/filing makeFile filer
    view/parts/download-blob downloadBlob
    book/attachments typeOf asItIs attach keepBlob
    book/entries putSealed
    book/posted posted
    book/reading addAfter
    book/shelf/record saveShelf
    book/shelf/segment writeSegment readSegment
    book/shelf/write ownSegments ownDiffers missingSegments
    job/material-fans fanItems
    job/read rowValue
    view/calculator/paste-fans pasteFans
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
    report/held heldContent sinceThen
    report/page-schema readPage`,
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
