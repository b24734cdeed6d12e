// What no client library would send, over a bare socket, and what came back until the server closed.
import { once } from 'node:events';
import { connect } from 'node:net';

export interface RawAnswer {
  status: number;
  headers: Record<string, string>;
  body: string;
  /** Undefined where the body is no JSON. */
  json: Record<string, unknown> | undefined;
}

const parsed = (body: string): Record<string, unknown> | undefined => {
  try {
    return JSON.parse(body) as Record<string, unknown>;
  } catch {
    return undefined;
  }
};

function readAnswer(text: string): RawAnswer {
  const [head = '', ...rest] = text.split('\r\n\r\n');
  const [first = '', ...lines] = head.split('\r\n');
  const body = rest.join('\r\n\r\n');
  const headers = Object.fromEntries(
    lines.map((line) => [line.slice(0, line.indexOf(':')).toLowerCase(), line.slice(line.indexOf(':') + 1).trim()]),
  );
  return { status: Number(first.split(' ')[1] ?? 0), headers, body, json: parsed(body) };
}

/** Sends the pieces, the next one whenever `next` resolves, and answers what the server said before it closed the line. */
export async function exchange(
  port: number,
  pieces: string | string[],
  next: () => Promise<void> = async () => {},
): Promise<RawAnswer> {
  const socket = connect(port, '127.0.0.1');
  let text = '';
  socket.setEncoding('utf8').on('data', (piece: string) => void (text += piece));
  // A server that cuts a slow sender may reset the line.
  socket.on('error', () => {});
  const closed = once(socket, 'close');
  for (const piece of [pieces].flat()) {
    if (!socket.writable) break;
    socket.write(piece);
    await next();
  }
  await closed;
  return readAnswer(text);
}
