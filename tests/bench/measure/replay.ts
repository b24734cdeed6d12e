// The statements of one command, sent again through the bare driver for other lots and under other ids: the same texts, the same locks.
import { APP_ROLE } from '@rootclock/server/db/pool';
import pg from 'pg';
import type { Nursery } from '../nursery.ts';
import type { Recorder, Statement } from './recording.ts';
import { type CommandKind, KINDS, type NextCommand, type Worker } from './stock.ts';

export interface Template {
  statements: Statement[];
  /** What the recorded command was about, to be put in other words each time. */
  recorded: { commandId: string; lotId: string; placeId: string; toPlaceId: string; version: number };
}

export type Templates = Record<CommandKind, Template>;

/** Commands recorded of each kind: most send the same statements, some have promises to replan as well. The commonest form is replayed. */
const RECORDED = 12;

export async function recordTemplates(recorder: Recorder, worker: Worker): Promise<Templates> {
  const templates: Partial<Templates> = {};
  for (const kind of KINDS) {
    const byForm = new Map<string, Template[]>();
    for (let nth = 0; nth < RECORDED; nth++) {
      const next = worker.next(kind);
      const template = templateOf(next, await recorder.command(`stock.${kind}`, next.sent));
      worker.done(next);
      const form = template.statements.map(({ text }) => text).join(';');
      byForm.set(form, [...(byForm.get(form) ?? []), template]);
    }
    const commonest = [...byForm.values()].reduce((most, each) => (each.length > most.length ? each : most), []);
    // The last of them, since the first one pays for what the server then keeps.
    const template = commonest.at(-1);
    if (template) templates[kind] = template;
  }
  return templates as Templates;
}

function templateOf({ sent, lot, placeId, toPlaceId }: NextCommand, statements: Statement[]): Template {
  const notified = statements
    .flatMap(({ values }) => values)
    .find((value): value is string => typeof value === 'string' && value.startsWith('{"nursery"'));
  const version = notified === undefined ? Number.NaN : (JSON.parse(notified) as { version: number }).version;
  if (!Number.isInteger(version)) throw new Error('the recorded command notified no version');
  return { statements, recorded: { commandId: sent.commandId, lotId: lot.lotId, placeId, toPlaceId, version } };
}

/** One connection that sends commands as the server does. */
export class Replayer {
  private constructor(
    private readonly client: pg.Client,
    private readonly templates: Templates,
  ) {}

  static async open(nursery: Nursery, templates: Templates): Promise<Replayer> {
    const client = new pg.Client({ connectionString: nursery.url, options: `-c role=${APP_ROLE}` });
    await client.connect();
    return new Replayer(client, templates);
  }

  async send({ kind, sent, lot, placeId, toPlaceId }: NextCommand): Promise<void> {
    const { statements, recorded } = this.templates[kind];
    let version = recorded.version;
    const words = new Map([
      [recorded.commandId, sent.commandId],
      [recorded.lotId, lot.lotId],
      [recorded.placeId, placeId],
      [recorded.toPlaceId, toPlaceId],
    ]);
    const known = new RegExp([...words.keys()].join('|'), 'g');
    const adapted = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(adapted);
      if (typeof value === 'string')
        return value
          .replace(known, (word) => words.get(word) ?? word)
          .replace(`"version":${recorded.version}`, `"version":${version}`);
      return value === recorded.version ? version : value;
    };
    for (const { text, values, name } of statements) {
      const { rows } = await this.client.query<{ version?: number }>({ text, values: values.map(adapted), name });
      if (text.includes('begin_command')) {
        const begun = rows[0]?.version;
        if (begun === undefined) throw new Error('the replayed command began no version');
        version = begun;
      }
    }
  }

  close(): Promise<void> {
    return this.client.end();
  }
}
