import { useEffect, useRef } from 'preact/hooks'
import type { Field } from '../../pdf/fields.ts'
import type { PdfPage } from '../../pdf/library.ts'
import type { Opened } from '../../pdf/open.ts'
import { say } from '../../words/say.ts'
import { FieldControl, Mirror } from './controls.tsx'
import type { Held } from './values.ts'

/** Everything but the fields is drawn: those stand above as controls (`AnnotationMode` of the library). */
const withoutFields = 2

/** Points of a page are drawn on so many pixels at most, whatever the zoom. */
const mostPixels = 16_000_000

interface SheetProps {
  opened: Opened
  page: PdfPage
  number: number
  held: Held
  zoom: number
}

const height = ({ widgets: [first] }: Field): number => first!.box.top
const left = ({ widgets: [first] }: Field): number => first!.box.left

/** As one reads: from the top down, and in a line from its left. */
function inOrder(a: Field, b: Field): number {
  const off = height(a) - height(b)
  return Math.abs(off) > 5 ? off : left(a) - left(b)
}

/** The fields of a page, those after one another of one part together. */
function partsOf({ fields, called }: Opened, number: number): { section: string; fields: Field[] }[] {
  const parts: { section: string; fields: Field[] }[] = []
  for (const field of fields.filter(({ widgets: [first] }) => first?.page === number).toSorted(inOrder)) {
    const section = called.get(field.name)?.section ?? ''
    const last = parts.at(-1)
    if (last?.section === section) last.fields.push(field)
    else parts.push({ section, fields: [field] })
  }
  return parts
}

const nothing = { name: '', section: '', options: [] }

/** One page: drawn when it comes near the window, with its fields as controls above. */
export function Sheet({ opened, page, number, held, zoom }: SheetProps) {
  const sheet = useRef<HTMLElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const { width, height: tall } = page.getViewport({ scale: 1 })

  useEffect(() => {
    const draw = canvas.current!
    let drawing: ReturnType<PdfPage['render']> | undefined
    const look = new IntersectionObserver(
      ([seen]) => {
        if (!seen?.isIntersecting) {
          // A page far away takes no memory.
          drawing?.cancel()
          drawing = undefined
          draw.width = draw.height = 0
          return
        }
        if (drawing) return
        const most = Math.sqrt(mostPixels / (width * tall))
        const viewport = page.getViewport({ scale: Math.min(zoom * devicePixelRatio, most) })
        draw.width = Math.round(viewport.width)
        draw.height = Math.round(viewport.height)
        drawing = page.render({ canvas: draw, viewport, annotationMode: withoutFields })
        // What cannot be drawn stays white: the fields are there.
        drawing.promise.catch(() => {})
      },
      { rootMargin: '100%' },
    )
    look.observe(sheet.current!)
    return () => {
      look.disconnect()
      drawing?.cancel()
    }
  }, [page, zoom, width, tall])

  return (
    <article
      ref={sheet}
      class="sheet"
      aria-label={say`Page ${number} of ${opened.pdf.numPages}`}
      style={{ width: `calc(var(--zoom) * ${width}px)`, height: `calc(var(--zoom) * ${tall}px)` }}
    >
      <canvas ref={canvas} aria-hidden="true" />
      {partsOf(opened, number).map(({ section, fields }, index) => (
        // oxlint-disable-next-line react/no-array-index-key -- the parts of an open form stay
        <div key={index} role={section ? 'group' : undefined} aria-label={section || undefined}>
          {fields.map((field) => (
            <FieldControl
              key={field.name}
              field={field}
              called={opened.called.get(field.name) ?? nothing}
              held={held}
            />
          ))}
        </div>
      ))}
      {opened.fields.flatMap((field) =>
        field.kind === 'radio'
          ? []
          : field.widgets
              .slice(1)
              .filter((widget) => widget.page === number)
              .map((widget) => <Mirror key={widget.id} field={field} widget={widget} held={held} />),
      )}
    </article>
  )
}
