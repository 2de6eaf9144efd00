/** The PDF library and its thread, brought when the first file is opened. */
// oxlint-disable-next-line import/default -- the build gives the address of the file
import workerUrl from 'pdfjs-dist/build/pdf.worker.min.mjs?url'
import type { Library } from '../../pdf/library.ts'

export interface Reader {
  pdfjs: Library
  /** The library's own handle of the thread. */
  worker: unknown
  /** Ends the thread, whatever it is doing. */
  end: () => void
}

/** A thread of its own for each file: one that a file holds up can be ended. */
export async function startReader(): Promise<Reader> {
  const { getDocument, PDFWorker } = await import('pdfjs-dist/build/pdf.mjs')
  const thread = new Worker(workerUrl, { type: 'module' })
  const worker = PDFWorker.create({ port: thread })
  return {
    pdfjs: { getDocument },
    worker,
    end: () => {
      worker.destroy()
      thread.terminate()
    },
  }
}
