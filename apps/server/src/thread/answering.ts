// The inside of a worker thread: it reckons one answer after the other, so that no request of the server waits for arithmetic.
import { parentPort } from 'node:worker_threads';
import type { Asked, Told } from './messages.ts';

/** Answers every question that the thread is asked. Only for the inside of a worker thread. */
export function answerQuestions<Question, Answer>(reckon: (question: Question) => Answer | Promise<Answer>): void {
  const port = parentPort;
  if (!port) throw new Error('this is for the inside of a worker thread');
  const tell = (told: Told<Answer>) => port.postMessage(told);
  port.on('message', ({ question }: Asked<Question>) => {
    Promise.resolve()
      .then(() => reckon(question))
      .then(
        (answer): Told<Answer> => ({ answer, error: null }),
        (error: unknown): Told<Answer> => ({
          answer: null,
          error: error instanceof Error ? (error.stack ?? error.message) : String(error),
        }),
      )
      .then(tell, () => process.exit(1));
  });
  tell('ready');
}
