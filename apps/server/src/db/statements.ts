import * as z from 'zod/mini';
import { sql, type Sql } from './sql.ts';

/** The text of a statement with its values, or a statement that was put together before. */
type Ask<Answer> = (text: TemplateStringsArray | Sql, ...values: unknown[]) => Promise<Answer>;

/** All that stores and reads see of the database. Each statement states what its rows are; its type follows from that. */
export interface Statements {
  rows<Row extends z.ZodMiniType>(row: Row): Ask<z.output<Row>[]>;
  /** The only row, if there is one. */
  row<Row extends z.ZodMiniType>(row: Row): Ask<z.output<Row> | undefined>;
  /** Answers how many rows it touched. */
  run: Ask<number>;
}

export interface Answered {
  rows: unknown[];
  rowCount: number | null;
}

let parsesRows = false;

/** Lets every row be held against what its statement says of it. Tests do; in use it would only cost time. */
export function parseRows(): void {
  parsesRows = true;
}

/** The interface over whatever carries statements to the database. */
export function statementsOver(ask: (statement: Sql) => Promise<Answered>): Statements {
  const asked = async <Row extends z.ZodMiniType>(row: Row, text: TemplateStringsArray | Sql, values: unknown[]) => {
    const statement = 'raw' in text ? sql(text, ...values) : text;
    const { rows } = await ask(statement);
    if (parsesRows) hold(rows, row, statement.sql);
    return rows as z.output<Row>[];
  };
  return {
    rows:
      (row) =>
      (text, ...values) =>
        asked(row, text, values),
    row:
      (row) =>
      async (text, ...values) => {
        const rows = await asked(row, text, values);
        if (rows.length > 1) throw new Error(`a statement that answers one row answered ${rows.length}`);
        return rows[0];
      },
    run: async (text, ...values) => (await ask('raw' in text ? sql(text, ...values) : text)).rowCount ?? 0,
  };
}

function hold(rows: unknown[], row: z.ZodMiniType, statement: string): void {
  const { error } = z.safeParse(z.array(row), rows);
  if (error)
    throw new Error(`a row is not what its statement says: ${JSON.stringify(error.issues[0])} in ${statement.trim()}`);
}
