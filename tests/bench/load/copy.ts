// Rows into tables by COPY … FROM STDIN, as PostgreSQL's own protocol has it.
import { Buffer } from 'node:buffer';
import pg from 'pg';

/** The two messages of a copy that the types of pg leave out. */
interface CopyConnection {
  sendCopyFromChunk(chunk: Buffer): void;
  endCopyFrom(): void;
}

/** A statement that answers the server's request for data. */
class CopyIn extends pg.Query {
  constructor(
    statement: string,
    private readonly data: string,
  ) {
    super(statement);
  }

  handleCopyInResponse(connection: CopyConnection): void {
    connection.sendCopyFromChunk(Buffer.from(this.data));
    connection.endCopyFrom();
  }
}

function copyIn(client: pg.Client, statement: string, rows: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const copy = new CopyIn(statement, rows);
    copy.on('error', reject);
    copy.on('end', () => resolve());
    client.query(copy);
  });
}

/** What is written, null included: ids, days, numbers and words of ours, none of which COPY needs escaped. */
type Value = string | number | boolean | null;

const CHUNK_CHARACTERS = 2_000_000;

/** Tables being filled over one connection: rows gather until a chunk is worth a COPY, and the next ones are made while it is under way. */
export class Sheets {
  private readonly gathered = new Map<string, { statement: string; data: string; rows: number }>();
  private underWay: Promise<void> = Promise.resolve();
  /** The tables whose chunk is full. */
  private readonly full = new Set<string>();
  private readonly written = new Map<string, number>();

  constructor(private readonly client: pg.Client) {}

  open(table: string, columns: string): (first: Value, ...values: Value[]) => void {
    const sheet = { statement: `COPY ${table} (${columns}) FROM STDIN`, data: '', rows: 0 };
    this.gathered.set(table, sheet);
    return (first, ...values) => {
      let row = `${first ?? '\\N'}`;
      for (const value of values) row += `\t${value ?? '\\N'}`;
      sheet.data += `${row}\n`;
      sheet.rows++;
      if (sheet.data.length >= CHUNK_CHARACTERS) this.full.add(table);
    };
  }

  /** Sends what is worth sending. Called often; waits only while the server is a whole chunk behind. */
  async sendFull(): Promise<void> {
    for (const table of this.full) await this.send(table);
    this.full.clear();
  }

  async sendAll(): Promise<void> {
    for (const table of this.gathered.keys()) await this.send(table);
    await this.underWay;
  }

  /** How many rows went into each table. */
  counts(): Record<string, number> {
    return Object.fromEntries(this.written);
  }

  private async send(table: string): Promise<void> {
    const sheet = this.gathered.get(table);
    if (!sheet || sheet.rows === 0) return;
    const { data, rows } = sheet;
    sheet.data = '';
    sheet.rows = 0;
    this.written.set(table, (this.written.get(table) ?? 0) + rows);
    await this.underWay;
    this.underWay = copyIn(this.client, sheet.statement, data);
  }
}
