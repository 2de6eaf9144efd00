import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { PdfPage } from '../../pdf/library.ts'
import { NotOpened, openForm, type Opened, type Opening } from '../../pdf/open.ts'
import { whyTooBig } from '../../pdf/look.ts'
import { say } from '../../words/say.ts'
import { wording } from '../parts/wording.ts'
import { Choose, Password } from './choose.tsx'
import { Editions } from './editions.tsx'
import { makeFile, stateOf, type Open, type Ready } from './filing.ts'
import { startReader, type Reader } from './reader.ts'
import { Sheet } from './sheet.tsx'
import { Bar } from './bar.tsx'
import { downloadBlob } from '../parts/download-blob.ts'
import { Held } from './values.ts'

/** What the page tells the part that fills it. */
export interface Desk {
  open: Open | undefined
  opening: () => Opening
  /** The name of the job that was last filled in or mapped. */
  job: string
  ready: (ready: Ready) => void
}

type State =
  | { is: 'choosing'; trouble: string }
  | { is: 'opening'; file: string; done: number; stop: AbortController }
  | { is: 'asking'; file: File; wrong: boolean }
  | { is: 'open'; form: Open; pages: PdfPage[] }

const pen = document.createElement('canvas').getContext('2d')

/** How wide a text is in the letters of most forms, set at one point. */
function measure(text: string): number {
  if (!pen) return 0
  pen.font = "100px Helvetica, Arial, 'Liberation Sans', sans-serif"
  return pen.measureText(text).width / 100
}

interface Shown extends Open {
  pages: PdfPage[]
}

/** A page of the extension that shows a PDF form, so that it is mapped and filled like any page. */
export function PdfForm({ desk }: { desk: Desk }) {
  const [state, setState] = useState<State>({ is: 'choosing', trouble: '' })
  const reader = useRef<Reader | undefined>(undefined)

  const close = () => {
    reader.current?.end()
    reader.current = undefined
    desk.open = undefined
  }

  const open = async (file: File, password?: string) => {
    if (state.is === 'opening') return
    close()
    const stop = new AbortController()
    setState({ is: 'opening', file: file.name, done: 0, stop })
    try {
      const shown = await read(
        file,
        password,
        stop.signal,
        (now) => (reader.current = now),
        (done) => setState({ is: 'opening', file: file.name, done, stop }),
      )
      const { pages, ...form } = shown
      desk.open = form
      const { pdfjs, worker } = reader.current!
      desk.opening = () => ({ pdfjs, worker, measure })
      location.replace(`#${form.opened.id}`)
      document.title = say`${form.opened.title || file.name}, PDF form`
      setState({ is: 'open', form, pages })
    } catch (error) {
      close()
      if (location.hash) history.replaceState(undefined, '', location.pathname)
      if (error instanceof NotOpened && error.password)
        return setState({ is: 'asking', file, wrong: error.password === 'wrong' })
      setState({ is: 'choosing', trouble: say`${file.name}: ${wording(error)}` })
    }
  }

  useDropped((file) => void open(file))

  if (state.is === 'choosing') return <Choose trouble={state.trouble} onFile={(file) => void open(file)} />
  if (state.is === 'asking')
    return (
      <Password
        file={state.file.name}
        wrong={state.wrong}
        onGiven={(password) => void open(state.file, password)}
        onBack={() => setState({ is: 'choosing', trouble: '' })}
      />
    )
  if (state.is === 'opening')
    return (
      <main class="choose">
        <h1>{state.file}</h1>
        <p role="status">{say`Reading the form`}</p>
        <progress max={1} value={state.done} aria-label={say`Reading the form`} />
        <div class="acts">
          <button type="button" class="b" onClick={() => state.stop.abort()}>{say`Stop`}</button>
        </div>
      </main>
    )
  return (
    <OpenForm
      key={state.form.opened.id}
      desk={desk}
      form={state.form}
      pages={state.pages}
      onFile={(file) => void open(file)}
    />
  )
}

/** A file that is dropped anywhere on the page. */
function useDropped(take: (file: File) => void): void {
  const latest = useRef(take)
  latest.current = take
  // Before the page is painted: from then on a file may fall on it.
  useLayoutEffect(() => {
    const over = (event: DragEvent) => event.preventDefault()
    const drop = (event: DragEvent) => {
      event.preventDefault()
      const [file] = event.dataTransfer?.files ?? []
      if (file) latest.current(file)
    }
    addEventListener('dragover', over)
    addEventListener('drop', drop)
    return () => {
      removeEventListener('dragover', over)
      removeEventListener('drop', drop)
    }
  }, [])
}

/** Reads a file into a form, in a thread of its own. */
async function read(
  file: File,
  password: string | undefined,
  signal: AbortSignal,
  onReader: (reader: Reader) => void,
  onProgress: (done: number) => void,
): Promise<Shown> {
  const why = whyTooBig(file.size)
  if (why) throw new NotOpened(why)
  const bytes = new Uint8Array(await file.arrayBuffer())
  const reader = await startReader()
  onReader(reader)
  const opened: Opened = await openForm(bytes, {
    pdfjs: reader.pdfjs,
    worker: reader.worker,
    password,
    signal,
    onProgress: (done, all) => onProgress(done / all),
  })
  const pages: PdfPage[] = []
  for (let number = 1; number <= opened.pdf.numPages; number++) pages.push(await opened.pdf.getPage(number))
  return { opened, held: new Held(opened.fields), file: file.name, pages }
}

interface OpenFormProps {
  desk: Desk
  form: Open
  pages: PdfPage[]
  onFile: (file: File) => void
}

const zooms = [0.5, 0.67, 0.8, 1, 1.25, 1.5, 2, 3]

function OpenForm({ desk, form, pages, onFile }: OpenFormProps) {
  const { opened, held } = form
  const [zoom, setZoom] = useState(1.25)
  const [ready, setReady] = useState<Ready>()
  const [stale, setStale] = useState(false)
  const [said, setSaid] = useState('')
  desk.ready = (now) => {
    setReady(now)
    setStale(false)
  }
  useEffect(() => held.listen(() => setStale(ready !== undefined && stateOf(held) !== ready.made)), [held, ready])

  const save = async () => {
    setSaid('')
    try {
      const now = ready && !stale ? ready : await makeFile(form, desk.job, desk.opening())
      setReady(now)
      setStale(false)
      const wrong = now.fields.filter(({ wanted, held: there }) => wanted !== there)
      if (wrong.length > 0)
        return setSaid(
          say`Not saved: ${wrong.length} fields of the new file do not hold what the page shows, the first is “${wrong[0]?.name ?? ''}”. Look at them and try again.`,
        )
      downloadBlob(now.name, new Blob([now.bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }))
      setSaid(say`Saved as ${now.name}. ${form.file} is as it was.`)
    } catch (error) {
      setSaid(say`Not saved: ${wording(error)}`)
    }
  }

  return (
    <>
      <Bar
        form={form}
        ready={ready}
        stale={stale}
        said={said}
        zoom={zoom}
        onZoom={(by) => setZoom(zooms[Math.min(zooms.length - 1, Math.max(0, zooms.indexOf(zoom) + by))] ?? 1)}
        onSave={() => void save()}
        onFile={onFile}
      />
      <main class="sheets" style={{ '--zoom': zoom }}>
        <h1>{opened.title || form.file}</h1>
        <Editions opened={opened} />
        {pages.map((page, index) => (
          <Sheet key={index} opened={opened} page={page} number={index + 1} held={held} zoom={zoom} />
        ))}
      </main>
    </>
  )
}
