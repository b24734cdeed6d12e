// What the driver throws, sorted at the one place where it is known to come from the driver.
import type { Prisma } from './generated/client.ts';

type Factory = NonNullable<Prisma.PrismaClientOptions['adapter']>;
type Asked = Pick<Awaited<ReturnType<Factory['connect']>>, 'queryRaw' | 'executeRaw'>;

/**
 * The database gave no answer: the connection broke, was closed, or could not be made. Nobody knows what became of the statement.
 * It carries no code of its own, because Prisma replaces whatever does.
 */
export class NoAnswer extends Error {
  override readonly name = 'NoAnswer';
  constructor(cause: unknown) {
    super(`the database gave no answer: ${cause instanceof Error ? cause.message : String(cause)}`, { cause });
  }
}

interface DriverCause {
  kind?: unknown;
  originalCode?: unknown;
  severity?: unknown;
}

/** An answer of PostgreSQL has an SQLSTATE. With one that ends the session, the connection is gone whatever the state says. */
function isAnswer(error: unknown): boolean {
  if (!(error instanceof Error) || error.name !== 'DriverAdapterError') return false;
  const { kind, originalCode, severity } = error.cause as DriverCause;
  return (
    kind === 'UnsupportedNativeDataType' ||
    (typeof originalCode === 'string' && severity !== 'FATAL' && severity !== 'PANIC')
  );
}

/** Mistakes of the program, met while values were made ready for the driver or read from it. */
const isMistake = (error: unknown) =>
  [TypeError, RangeError, SyntaxError, ReferenceError].some((kind) => error instanceof kind);

async function heard<Answer>(answer: Promise<Answer>): Promise<Answer> {
  try {
    return await answer;
  } catch (error) {
    throw isAnswer(error) || isMistake(error) ? error : new NoAnswer(error);
  }
}

function listenTo<Of extends Asked>(asked: Of): Of {
  const queryRaw = asked.queryRaw.bind(asked);
  const executeRaw = asked.executeRaw.bind(asked);
  return Object.assign(asked, {
    queryRaw: (query: Parameters<Of['queryRaw']>[0]) => heard(queryRaw(query)),
    executeRaw: (query: Parameters<Of['executeRaw']>[0]) => heard(executeRaw(query)),
  });
}

/**
 * Makes a driver tell a lost connection from all else. The driver has a dozen sentences for it, Prisma passes some on as they are and
 * wraps others, and all of them change with the moment at which the connection broke; so what counts is not the sentence but that it
 * comes from the driver and is no answer of PostgreSQL.
 */
export function tellingNoAnswer(factory: Factory): Factory {
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => {
      const adapter = listenTo(await factory.connect());
      const startTransaction = adapter.startTransaction.bind(adapter);
      return Object.assign(adapter, {
        startTransaction: async (...isolation: Parameters<typeof startTransaction>) =>
          listenTo(await heard(startTransaction(...isolation))),
      });
    },
  };
}
