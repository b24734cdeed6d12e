/** What a thread is asked, one at a time. */
export interface Asked<Question> {
  question: Question;
}

/** What it tells: once that it is ready, and then an answer to each question. */
export type Told<Answer> = 'ready' | { answer: Answer; error: null } | { answer: null; error: string };
