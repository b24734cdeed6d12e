/**
 * `const lose = useCommand('stock.loseFromLot')`: one kind of write. `send(body)` keeps the entry in the outbox, resolves with the
 * server's answer and rejects with CommandError. `state` is what a button or form shows: `waiting` means kept on this
 * device without an answer yet; `saved` is said only after the server answered. When the component goes, the outbox
 * carries on alone.
 */
import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import type { CommandAnswer, CommandBody, CommandName } from '../api/commands.ts';
import { CommandError, readFailure, type Failure } from '../api/failure.ts';
import { claimCreated, newCommandId } from '../ids.ts';
import { outbox } from './browser-outbox.ts';
import { addressNow, beingMended } from './mending.ts';
import { isStalled } from './queue.ts';

export type CommandState = 'idle' | 'sending' | 'waiting' | 'saved' | 'refused';

export interface CommandHandle<Name extends CommandName> {
  /** `bytes` is a file that goes with the entry. */
  send(body: CommandBody<Name>, bytes?: Blob): Promise<CommandAnswer<Name>>;
  state: CommandState;
  failure: Failure | null;
  /** Back to idle, so that the next entry of a potting session can be typed; an entry without an answer is left to the outbox. */
  reset(): void;
  /** The refused entry that this form is to put right, if there is one and it fits; the next send takes its place. */
  takeKept(fits?: (body: CommandBody<Name>) => boolean): { body: CommandBody<Name>; failure: Failure | null } | null;
  /** What was kept is no longer wanted. */
  dropKept(): void;
}

type Settled = { state: 'idle' | 'saved' | 'refused'; failure: Failure | null };

/** `title` is what the entry is called in the outbox while it waits, such as "Lost: 12 of ASTU-26-004". */
export function useCommand<Name extends CommandName>(
  name: Name,
  { title = '' }: { title?: string } = {},
): CommandHandle<Name> {
  const [settled, setSettled] = useState<Settled>({ state: 'idle', failure: null });
  const [entryId, setEntryId] = useState<string | null>(null);
  const underWay = useRef<string | null>(null);
  const last = useRef<{ id: string; creates: readonly string[] } | null>(null);
  const stalled = useSyncExternalStore(outbox.subscribe, () => isStalled(outbox.snapshot().queue, entryId));
  useEffect(() => () => void (underWay.current && outbox.release(underWay.current)), []);

  const send = useCallback(
    async (body: CommandBody<Name>, bytes?: Blob): Promise<CommandAnswer<Name>> => {
      const id = newCommandId();
      // An entry that was refused and mended creates the same things; what waits for them follows the new entry.
      const refused = last.current;
      const creates = [...new Set([...claimCreated(body), ...(refused?.creates ?? [])])];
      last.current = { id, creates };
      underWay.current = id;
      setEntryId(id);
      setSettled({ state: 'idle', failure: null });
      try {
        const entry = { id, name, title, body, creates, from: addressNow() };
        const answer = await outbox.enter(entry, { replaces: refused?.id, bytes });
        last.current = null;
        setSettled({ state: 'saved', failure: null });
        return answer as CommandAnswer<Name>;
      } catch (error) {
        setSettled({ state: 'refused', failure: readFailure(error) });
        throw error instanceof CommandError ? error : new CommandError(readFailure(error));
      } finally {
        underWay.current = null;
        setEntryId(null);
      }
    },
    [name, title],
  );
  const reset = useCallback(() => {
    if (underWay.current) outbox.release(underWay.current);
    underWay.current = null;
    last.current = null;
    setEntryId(null);
    setSettled({ state: 'idle', failure: null });
  }, []);
  const takeKept = useCallback(
    (fits: (body: CommandBody<Name>) => boolean = () => true) => {
      const entry = beingMended(name);
      const body = entry?.body as CommandBody<Name>;
      if (!entry || !fits(body)) return null;
      last.current = { id: entry.id, creates: entry.creates };
      return { body, failure: entry.parked?.kind === 'refused' ? entry.parked.failure : null };
    },
    [name],
  );
  const dropKept = useCallback(() => {
    if (last.current) void outbox.discard(last.current.id);
    reset();
  }, [reset]);
  const state: CommandState = entryId === null ? settled.state : stalled ? 'waiting' : 'sending';
  return { send, state, failure: settled.failure, reset, takeKept, dropKept };
}
