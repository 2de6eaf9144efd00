/** As much of pdfjs-dist as is used here: the library is handed in, so that this folder runs in Node as in a page. */

export interface Viewport {
  width: number
  height: number
  transform: number[]
}

export interface PdfPage {
  getViewport: (how: { scale: number }) => Viewport
  getAnnotations: () => Promise<unknown[]>
  getTextContent: () => Promise<{ items: unknown[] }>
  render: (how: { canvas: HTMLCanvasElement; viewport: Viewport; annotationMode: number; transform?: number[] }) => {
    promise: Promise<void>
    cancel: () => void
  }
  cleanup: () => boolean
}

export interface Pdf {
  numPages: number
  getPage: (number: number) => Promise<PdfPage>
  getPermissions: () => Promise<ReadonlySet<number> | null>
  getMetadata: () => Promise<{ info: unknown }>
  getFieldObjects: () => Promise<Record<string, unknown[]> | null>
  annotationStorage: { setValue: (id: string, value: { value: unknown }) => void; remove: (id: string) => void }
  saveDocument: () => Promise<Uint8Array>
}

export interface Loading {
  promise: Promise<Pdf>
  destroy: () => Promise<void>
}

export interface Library {
  getDocument: (how: Record<string, unknown>) => Loading
}
