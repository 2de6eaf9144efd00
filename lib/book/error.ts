/** A refusal of the book, as data; `message` says what is wrong and what to do. */
export type BookProblem = { code: 'invalid' | 'unknown' | 'ended' | 'conflict'; path: string; message: string }

export class BookError extends Error {
  readonly problems: BookProblem[]

  constructor(problems: [BookProblem, ...BookProblem[]]) {
    super(problems[0].message)
    this.name = 'BookError'
    this.problems = problems
  }
}

/** What is refused because it is not as it must be. */
export const refuse = (path: string, message: string): BookError => new BookError([{ code: 'invalid', path, message }])
