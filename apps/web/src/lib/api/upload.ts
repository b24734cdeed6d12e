/** The way of commands that a file goes with: a form of two parts, the entry as every command is sent and then the bytes. */
import { CommandError, NO_ANSWER } from './failure.ts';
import { heardFetch } from './heard-fetch.ts';

/** A photo on a bad line takes its time; a line that is dead is noticed by then. */
const UPLOAD_LIMIT_MS = 120_000;

interface Carrying {
  id: string;
  name: string;
  body: unknown;
  personId: string;
}

/** `files.addPhoto` goes to `/files/photos`. */
const addressOf = (name: string): string => `/files/${name.replace(/^files\.add/, '').toLowerCase()}s`;

/** Sends one command with its file. Rejects with an error that `readFailure` reads. */
export async function sendUpload({ id, name, body, personId }: Carrying, bytes: Blob): Promise<unknown> {
  const form = new FormData();
  form.append('entry', JSON.stringify({ commandId: id, personId, body }));
  form.append('bytes', bytes);
  const response = await heardFetch(addressOf(name), {
    method: 'POST',
    body: form,
    // Only our own pages can set it: forms of other sites can't.
    headers: { 'rootclock-upload': '1' },
    signal: AbortSignal.timeout(UPLOAD_LIMIT_MS),
  });
  const answer: unknown = await response.json();
  if (!response.ok) throw Object.assign(new Error('upload refused'), { meta: { response, responseJSON: answer } });
  if (typeof answer !== 'object' || answer === null) throw new CommandError(NO_ANSWER);
  return answer;
}
