import type { ErrorCode, ErrorData, NoData } from '@rootclock/contracts';

/** An expected error on its way to the person who asked; the code decides status and sentence. */
export class Refusal<Code extends ErrorCode = ErrorCode> extends Error {
  override readonly name = 'Refusal';
  constructor(
    readonly code: Code,
    readonly data?: Record<string, unknown>,
    readonly field?: string,
    /** For the log alone: what led to it, where it was not decided here. */
    cause?: unknown,
  ) {
    super(code, cause === undefined ? undefined : { cause });
  }
}

type DataOf<Code extends ErrorCode> = ErrorData<Code> extends NoData ? undefined : ErrorData<Code>;

/** Stops a command with an error of the one table; nothing of the command is written. */
export function refuse<Code extends ErrorCode>(code: Code, data: DataOf<Code>, field?: string): never {
  throw new Refusal(code, data as Record<string, unknown> | undefined, field);
}

/** The one answer for what does not exist here, be it nobody's or another nursery's. */
export function found<Row>(row: Row | null | undefined, what: string, field?: string): Row {
  if (row === null || row === undefined) refuse('not-found', { what }, field);
  return row as Row;
}
