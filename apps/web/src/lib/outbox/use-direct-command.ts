/**
 * For the few commands that must not be kept on the device because they carry a password or end the session: sent at once, never
 * stored. The same input keeps its command id, so that pressing again after a lost answer does no harm.
 */
import { useRef, useState } from 'react';
import { sendCommand } from '../api/client.ts';
import type { CommandAnswer, CommandBody, CommandName } from '../api/commands.ts';
import { CommandError, readFailure, type Failure } from '../api/failure.ts';
import { newCommandId } from '../ids.ts';
import type { CommandHandle, CommandState } from './use-command.ts';

export function useDirectCommand<Name extends CommandName>(name: Name): CommandHandle<Name> {
  const [now, setNow] = useState<{ state: CommandState; failure: Failure | null }>({ state: 'idle', failure: null });
  const sent = useRef<{ text: string; id: string } | null>(null);
  const send = async (body: CommandBody<Name>): Promise<CommandAnswer<Name>> => {
    const text = JSON.stringify(body);
    if (sent.current?.text !== text) sent.current = { text, id: newCommandId() };
    setNow({ state: 'sending', failure: null });
    try {
      const answer = await sendCommand(name, sent.current.id, body);
      setNow({ state: 'saved', failure: null });
      return answer as CommandAnswer<Name>;
    } catch (error) {
      const failure = readFailure(error);
      setNow({ state: 'refused', failure });
      throw new CommandError(failure);
    }
  };
  const reset = () => setNow({ state: 'idle', failure: null });
  return { ...now, send, reset, takeKept: () => null, dropKept: reset };
}
