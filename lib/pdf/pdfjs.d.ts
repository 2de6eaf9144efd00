// The package has types of its main file alone.
declare module 'pdfjs-dist/build/pdf.mjs' {
  export const getDocument: import('./library.ts').Library['getDocument']
  export const PDFWorker: { create: (how: { port: Worker }) => { destroy: () => void } }
}
declare module 'pdfjs-dist/legacy/build/pdf.mjs' {
  export const getDocument: import('./library.ts').Library['getDocument']
}
