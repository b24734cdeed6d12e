/**
 * A form that ends in a command: values, the check against the contract before sending, and errors beside their fields.
 *
 *   const form = useCommandForm({
 *     command: useCommand('stock.loseFromLot'),
 *     contract: stock.loseFromLot,
 *     initial: { units: null as number | null, cause: '' as LossCause | '' },
 *     body: (values) => ({ lotId, units: values.units, cause: values.cause }),
 *     onSaved: (answer) => …,
 *   });
 *   <Form {...form.props}> <NumberField label=… {...form.field('units')} /> …
 *
 * Fields are named after the body's paths, so that the server's errors find them; give `name` where they differ.
 */
import { readInput } from '@rootclock/contracts';
import { useMemo, useRef, useState } from 'react';
import type * as z from 'zod/mini';
import { useDayHere } from '../clock/index.ts';
import type { CommandAnswer, CommandBody, CommandName } from '../api/commands.ts';
import type { Failure } from '../api/failure.ts';
import { fieldSentences, sentenceOf } from '../api/sentences.ts';
import type { CommandHandle } from '../outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { movedOn } from './move-on.ts';

export interface CommandFormParts<Name extends CommandName, Values extends object> {
  command: CommandHandle<Name>;
  /** The command's own schema: what it refuses is said at once and never sent. */
  contract: z.ZodMiniType<unknown, CommandBody<Name>>;
  /** How the form begins. When today turns, days in it that nobody touched are taken from it anew. */
  initial: Values;
  /**
   * The body as it would be sent; it may still be incomplete, the contract judges it. What the command creates keeps its id
   * from the refused try before, since later entries may already name it: `lotId: previous?.lotId ?? newId()`.
   */
  body: (values: Values, previous: CommandBody<Name> | null) => unknown;
  /** The values that show a kept body again; with it the form can put a refused entry right. */
  fromKept?: (body: CommandBody<Name>) => Values;
  onSaved?: (answer: CommandAnswer<Name>, values: Values) => void;
}

export function useCommandForm<Name extends CommandName, Values extends object>({ command, contract, initial, body, fromKept, onSaved }: CommandFormParts<Name, Values>) {
  const spoken = useMessages();
  const [kept, setKept] = useState(() => (fromKept ? command.takeKept() : null));
  const [values, setValues] = useState(() => (kept !== null && fromKept ? fromKept(kept) : initial));
  const [touched, setTouched] = useState<ReadonlySet<string>>(() => new Set(kept === null ? [] : Object.keys(initial)));
  const touch = (keys: readonly string[]) => setTouched((before) => (keys.every((key) => before.has(key)) ? before : new Set([...before, ...keys])));
  const today = useDayHere();
  const [begun, setBegun] = useState({ today, initial });
  if (begun.today !== today) {
    setBegun({ today, initial });
    setValues((typed) => movedOn(typed, touched, begun.initial, initial));
  }
  const previous = useRef<CommandBody<Name> | null>(kept);
  const [unsent, setUnsent] = useState<Failure | null>(null);
  const [attempt, setAttempt] = useState(0);
  const failure = unsent ?? command.failure;
  // Sentences are made anew when the language changes; the failure itself stays.
  const errors = useMemo(() => (spoken && failure ? fieldSentences(failure) : {}), [failure, spoken]);
  const problem = failure && Object.keys(errors).length === 0 ? sentenceOf(failure) : undefined;
  const busy = command.state === 'sending' || command.state === 'waiting';

  const submit = async (entered: Values): Promise<void> => {
    if (busy) return;
    const whole = body(entered, previous.current);
    const read = readInput(contract, whole);
    if (!read.ok) {
      setUnsent({ code: 'invalid-input', class: 'input', data: { issues: read.issues } });
      setAttempt((count) => count + 1);
      return;
    }
    setUnsent(null);
    try {
      // What the contract has read is what it asks for; the server reads the same text once more.
      const sent = whole as CommandBody<Name>;
      previous.current = sent;
      const answer = await command.send(sent);
      previous.current = null;
      onSaved?.(answer, entered);
    } catch {
      // The refusal is in command.failure and shown beside its field.
      setAttempt((count) => count + 1);
    }
  };

  return {
    values,
    /** With a function where changes come faster than the screen is drawn: each must see what the one before has changed. */
    set: (part: Partial<Values> | ((before: Values) => Partial<Values>)) => {
      if (typeof part !== 'function') touch(Object.keys(part));
      setValues((before) => ({ ...before, ...(typeof part === 'function' ? part(before) : part) }));
    },
    field: <Key extends keyof Values & string>(name: Key) => ({
      name,
      value: values[name],
      onChange: (value: Values[Key]) => {
        touch([name]);
        setValues((before) => ({ ...before, [name]: value }));
      },
    }),
    /** For the next entry of a session: the values given, nothing said. */
    restart: (next: Partial<Values> = {}) => {
      setValues({ ...initial, ...next });
      setTouched(new Set());
      setUnsent(null);
      setKept(null);
      previous.current = null;
      command.reset();
    },
    busy,
    state: command.state,
    failure,
    props: { errors, problem, attempt, notice: kept === null ? undefined : spoken.outbox.mending, onSubmit: () => void submit(values) },
    /** Sends these values at once, for a button that fills in the whole form. */
    submit: (whole: Values) => void submit(whole),
  };
}
