// A page that hears of changes, as far as the server can tell: one stream of server-sent events, read as it comes.
import { request, type IncomingMessage } from 'node:http';
import type { LiveWord } from '@rootclock/contracts';

export interface Heard {
  words: LiveWord[];
  /** The code with which the server ended it; null for an end without a reason. */
  ended: Promise<string | null>;
  /** Reads no further, and leaves the line open. */
  pause(): void;
  resume(): void;
  close(): void;
}

/** Settles when the first word has come, or rejects with the status of another answer. */
export async function hear(address: string, cookie: string): Promise<Heard> {
  const asked = request(`${address}/trpc/live.hearChanges`, { headers: { cookie }, agent: false });
  const answer = await new Promise<IncomingMessage>((resolve, reject) =>
    asked.on('response', resolve).on('error', reject).end(),
  );
  if (answer.statusCode !== 200) throw new Error(`the stream was answered ${answer.statusCode}`);
  const words: LiveWord[] = [];
  let began: () => void = () => {};
  const hasBegun = new Promise<void>((resolve) => {
    began = resolve;
  });
  let code: string | null = null;
  let rest = '';
  answer.setEncoding('utf8').on('data', (text: string) => {
    const events = (rest + text).split('\n\n');
    rest = events.pop() ?? '';
    for (const event of events) {
      const [, name = 'message'] = /^event: (.*)$/m.exec(event) ?? [];
      const [, data = ''] = /^data: (.*)$/m.exec(event) ?? [];
      if (name === 'serialized-error') code = (JSON.parse(data) as { data: { code: string } }).data.code;
      if (name !== 'message' || data === '') continue;
      words.push(JSON.parse(data) as LiveWord);
      began();
    }
  });
  const ended = new Promise<string | null>((resolve) => {
    answer.on('close', () => resolve(code)).on('error', () => resolve(code));
  });
  await Promise.race([hasBegun, ended]);
  return {
    words,
    ended,
    pause: () => void answer.pause(),
    resume: () => void answer.resume(),
    close: () => void asked.destroy(),
  };
}
