/** Lines of text are typed like one line. */
export { writeText as writeTextarea } from '../text/write.ts'
