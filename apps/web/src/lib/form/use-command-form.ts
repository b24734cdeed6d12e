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
 * A form that edits a row also says which, and at what edition it was read: `row: { id: 'clientId', edition: client.edition }`. What somebody else saved
 * meanwhile is then shown beside what was typed, and nothing is lost on either side.
 *
 * Fields are named after the body's paths, so that the server's errors find them; give `name` where they differ.
 */
import { readInput } from '@rootclock/contracts';
import { createElement, useMemo, useRef, useState } from 'react';
import type * as z from 'zod/mini';
import { useDayHere } from '../clock/index.ts';
import type { CommandAnswer, CommandBody, CommandName } from '../api/commands.ts';
import type { Failure } from '../api/failure.ts';
import { fieldSentences, sentenceOf } from '../api/sentences.ts';
import type { CommandHandle } from '../outbox/index.ts';
import { useMessages } from '../../messages/index.ts';
import { type AsRead, asReadOf, type Choice, type Fields, isAsStored, sentWith, settled, valuesOf } from './as-read.ts';
import { Clash, clashOf, type FieldWords } from './clash.tsx';
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
  /** Of a form that edits a row: the field of the body that tells which, the edition read, and what the row held where the form begins with something else. */
  row?: { id: string; edition: number; shown?: Fields };
  /**
   * The values that show a body again, where they are not called and kept as in the body: for a row that somebody else edited, and to put a refused
   * entry right. `called` tells what people call the rows that are named by id.
   */
  fromBody?: (body: Fields, called: Readonly<Record<string, string>>) => Partial<Values>;
  /** The words of fields that are not one field of the form. */
  words?: Record<string, FieldWords>;
  onSaved?: (answer: CommandAnswer<Name>, values: Values) => void;
}

export function useCommandForm<Name extends CommandName, Values extends object>({
  command,
  contract,
  initial,
  body,
  row,
  fromBody,
  words,
  onSaved,
}: CommandFormParts<Name, Values>) {
  const spoken = useMessages();
  const readNow = (): AsRead | null =>
    row ? { edition: row.edition, body: { ...(body(initial, null) as Fields), ...row.shown } } : null;
  const show = (from: Fields, called: Readonly<Record<string, string>> = {}): Values => ({
    ...valuesOf(from, initial),
    ...fromBody?.(from, called),
  });
  // A row that lies behind the form goes on changing; the form stays with what it has read.
  const asRead = useRef<AsRead | null>(null);
  const [kept, setKept] = useState(() => {
    asRead.current = readNow();
    const taken = row ? command.takeKept((each) => (each as Fields)[row.id] === asRead.current?.body?.[row.id]) : null;
    if (taken) asRead.current = asReadOf(taken.body as Fields);
    return taken;
  });
  const [values, setValues] = useState(() =>
    kept ? show(kept.body as Fields, clashOf(kept.failure)?.called) : initial,
  );
  const [touched, setTouched] = useState<ReadonlySet<string>>(() => new Set(kept === null ? [] : Object.keys(initial)));
  const touch = (keys: readonly string[]) =>
    setTouched((before) => (keys.every((key) => before.has(key)) ? before : new Set([...before, ...keys])));
  const today = useDayHere();
  const [begun, setBegun] = useState({ today, initial });
  if (begun.today !== today) {
    setBegun({ today, initial });
    setValues((typed) => movedOn(typed, touched, begun.initial, initial));
  }
  const previous = useRef<CommandBody<Name> | null>(kept?.body ?? null);
  const [unsent, setUnsent] = useState<Failure | null>(kept?.failure ?? null);
  const [answered, setAnswered] = useState<Failure | null>(null);
  const [attempt, setAttempt] = useState(0);
  const met = unsent ?? command.failure;
  const failure = met === answered ? null : met;
  const clash = row ? clashOf(failure) : null;
  // Sentences are made anew when the language changes; the failure itself stays.
  const errors = useMemo(() => (spoken && failure ? fieldSentences(failure) : {}), [failure, spoken]);
  const problem = failure && !clash && Object.keys(errors).length === 0 ? sentenceOf(failure) : undefined;
  const busy = command.state === 'sending' || command.state === 'waiting';

  const submit = async (entered: Values): Promise<void> => {
    if (busy) return;
    const plain = body(entered, previous.current);
    const whole = asRead.current ? { ...(plain as Fields), ...sentWith(asRead.current, plain as Fields) } : plain;
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
      if (asRead.current) asRead.current = { edition: (answer as { edition: number }).edition, body: plain as Fields };
      onSaved?.(answer, entered);
    } catch {
      // The refusal is in command.failure and shown beside its field.
      setAttempt((count) => count + 1);
    }
  };

  /** Goes on from what both have made of the row, with the one or the other where both changed a field. */
  const settle = (choice: Choice): void => {
    if (!clash) return;
    const merged = settled(previous.current as Fields, clash, choice);
    const next = show(merged, clash.called);
    asRead.current = { edition: clash.edition, body: { ...merged, ...clash.stored } };
    setAnswered(met);
    setUnsent(null);
    setValues(next);
    touch(Object.keys(next));
    if (choice === 'mine') return void submit(next);
    if (isAsStored(merged, clash)) {
      setKept(null);
      previous.current = null;
      command.dropKept();
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
      asRead.current = readNow();
      command.reset();
    },
    busy,
    state: command.state,
    failure,
    props: {
      errors,
      problem,
      attempt,
      notice: kept === null ? undefined : spoken.outbox.mending,
      onSubmit: () => void submit(values),
      above: clash && createElement(Clash, { key: clash.edition, clash, words, busy, onSettle: settle }),
    },
    /** Sends these values at once, for a button that fills in the whole form. */
    submit: (whole: Values) => void submit(whole),
  };
}
