/** Called in a page of the extension: puts a form map into the book, as the helper would have it kept. */
export { saveMap } from '../../lib/book/maps.ts'
