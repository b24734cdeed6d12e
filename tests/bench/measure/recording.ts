// The statements that a request really sends, taken down as they pass the driver.
import { createApp } from '@rootclock/server/app';
import pg from 'pg';
import { NOW, type Nursery } from '../nursery.ts';
import { cookieOf, readPath } from '../serving.ts';

export interface Statement {
  text: string;
  values: unknown[];
  /** The server prepares each text once a connection under this name; so does whoever sends it again. */
  name: string | undefined;
}

/** What a read sends beside its own statements: who asks, whose nursery it is, and the transaction round it. */
const AROUND = /^\s*(BEGIN|SET TRANSACTION|COMMIT|ROLLBACK)\b|\btoken_holder\(|\bbegin_read\(/i;

export const ownStatements = (statements: readonly Statement[]) => statements.filter(({ text }) => !AROUND.test(text));

export class Recorder {
  private heard: Statement[] | null = null;
  private readonly query = pg.Client.prototype.query;

  private constructor(
    private readonly app: Awaited<ReturnType<typeof createApp>>,
    private readonly nursery: Nursery,
  ) {}

  /** A server in this process; only one may record at a time. */
  static async open(nursery: Nursery): Promise<Recorder> {
    const app = await createApp({ databaseUrl: nursery.url, clock: () => NOW });
    // What it sends while it gets ready belongs to no request.
    await app.ready();
    const recorder = new Recorder(app, nursery);
    recorder.listen();
    return recorder;
  }

  async read(procedure: string, input: object): Promise<Statement[]> {
    return this.record({ method: 'GET', url: readPath(procedure, input) });
  }

  async command(procedure: string, sent: { commandId: string; body: object }): Promise<Statement[]> {
    return this.record({ method: 'POST', url: `/trpc/${procedure}`, payload: sent });
  }

  async close(): Promise<void> {
    pg.Client.prototype.query = this.query;
    await this.app.close();
  }

  private listen(): void {
    const { query } = this;
    const hear = (statement: Statement) => void this.heard?.push(statement);
    pg.Client.prototype.query = new Proxy(query, {
      apply(target, client, args: unknown[]) {
        const [asked, values] = args;
        if (typeof asked === 'string')
          hear({ text: asked, values: Array.isArray(values) ? [...(values as unknown[])] : [], name: undefined });
        else if (isConfig(asked))
          hear({
            text: asked.text,
            values: [...(asked.values ?? (Array.isArray(values) ? (values as unknown[]) : []))],
            name: asked.name,
          });
        return Reflect.apply(target, client, args) as unknown;
      },
    });
  }

  private async record(request: { method: 'GET' | 'POST'; url: string; payload?: object }): Promise<Statement[]> {
    const statements: Statement[] = [];
    this.heard = statements;
    const answer = await this.app.inject({ ...request, headers: { cookie: cookieOf(this.nursery.session) } });
    this.heard = null;
    if (answer.statusCode !== 200)
      throw new Error(`${request.url.split('?')[0]} answered ${answer.statusCode}: ${answer.body.slice(0, 500)}`);
    if (statements.length === 0)
      throw new Error('no statement was heard: the server does not use the driver that is listened to');
    return statements;
  }
}

const isConfig = (asked: unknown): asked is { text: string; values?: unknown[]; name?: string } =>
  typeof asked === 'object' && asked !== null && typeof (asked as { text?: unknown }).text === 'string';
