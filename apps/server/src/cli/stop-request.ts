// Every way in which a running server is asked to end, as one promise.

export interface StopRequest {
  /** Settles with the reason once; a second signal changes nothing, since npm passes on what the terminal already sent. */
  asked: Promise<StopReason>;
  /** Throws Stopped when a stop was asked for: for the places between two steps of a start. */
  check(): void;
  /** Asks for a stop from within. */
  ask(reason: StopReason): void;
}

export interface StopReason {
  words: string;
  exitCode: number;
}

export class Stopped extends Error {
  override name = 'Stopped';
}

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

export function listenForStop(): StopRequest {
  let reason: StopReason | undefined;
  let settle: (reason: StopReason) => void = () => {};
  const asked = new Promise<StopReason>((resolve) => {
    settle = resolve;
  });
  const ask = (given: StopReason) => {
    reason ??= given;
    settle(reason);
  };
  for (const signal of signals) process.on(signal, () => ask({ words: `${signal} received`, exitCode: 0 }));
  // A fault nobody caught must still stop the database, which would otherwise outlive us.
  for (const fault of ['uncaughtException', 'unhandledRejection'] as const) {
    process.on(fault, (error: unknown) => {
      console.error(error);
      ask({ words: 'an unexpected fault', exitCode: 1 });
    });
  }
  return {
    asked,
    ask,
    check() {
      if (reason !== undefined) throw new Stopped(reason.words);
    },
  };
}
