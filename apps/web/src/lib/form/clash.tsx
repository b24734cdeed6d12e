/**
 * Clash: somebody else saved the row while this form was filled in. Each field that both changed is shown with both values, and the person keeps theirs
 * or takes the other; what only one of them changed needs no choice.
 */
import type { Edited } from '@rootclock/contracts';
import { isCalendarDate, isMonthDay } from '@rootclock/domain';
import { useContext, useEffect, useRef, useState } from 'react';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { FormFieldsContext } from '../../ui/form/form-context.ts';
import type { Failure } from '../api/failure.ts';
import { useFormat } from '../format/index.ts';
import type { Choice } from './as-read.ts';
import './clash.css';

export interface FieldWords {
  label: string;
  /** What a value of the body is to people; without it the value itself is told. */
  value?: (value: unknown, called: Readonly<Record<string, string>>) => string;
}

export const clashOf = (failure: Failure | null): Edited | null =>
  failure?.code === 'edited-meanwhile' ? (failure.data as unknown as Edited) : null;

interface ClashProps {
  clash: Edited;
  words: Record<string, FieldWords> | undefined;
  busy: boolean;
  onSettle: (choice: Choice) => void;
}

export function Clash({ clash, words = {}, busy, onSettle }: ClashProps) {
  const { outbox } = useMessages();
  const say = outbox.clash;
  const { dates } = useFormat();
  const form = useContext(FormFieldsContext);
  const said = useSaid();
  // Fields leave their labels in an effect, so they are known one render later.
  const [, setKnown] = useState(false);
  const panel = useRef<HTMLDivElement>(null);
  useEffect(() => {
    setKnown(true);
    panel.current?.focus();
  }, []);
  const order = [...(form?.labels.keys() ?? [])];
  const inOrder = clash.fields.toSorted((a, b) => order.indexOf(a.field) - order.indexOf(b.field));
  return (
    <div ref={panel} tabIndex={-1} className="clash" role="group" aria-label={say.title(clash.by)}>
      <p className="clash-title">{say.title(clash.by)}</p>
      <p>{clash.at ? say.savedAt(dates.instant(clash.at)) : say.nothingSaved}</p>
      <dl className="clash-fields">
        {inOrder.map(({ field, stored, sent }) => {
          const own = words[field];
          const tell = (value: unknown) =>
            own?.value?.(value, clash.called) ?? said(value, form?.choices.get(field), clash.called);
          return (
            <div key={field} className="clash-field">
              <dt>{own?.label ?? form?.labels.get(field) ?? ''}</dt>
              <dd>
                <span className="clash-whose">{say.yours}</span> <strong>{tell(sent)}</strong>
              </dd>
              <dd>
                <span className="clash-whose">{say.theirs}</span> <strong>{tell(stored)}</strong>
              </dd>
            </div>
          );
        })}
      </dl>
      <div className="row">
        <Button look="primary" busy={busy} onClick={() => onSettle('mine')}>
          {say.keepMine}
        </Button>
        <Button onClick={() => onSettle('theirs')}>{say.takeTheirs}</Button>
      </div>
    </div>
  );
}

/** A value as people say it: the words of a choice, a day, a number, the name of a row, yes or no. */
function useSaid() {
  const {
    outbox: { clash: say },
  } = useMessages();
  const { dates, numbers } = useFormat();
  return function said(
    value: unknown,
    choices: ReadonlyMap<string, string> | undefined,
    called: Readonly<Record<string, string>>,
  ): string {
    if (value === null || value === undefined || value === '' || (Array.isArray(value) && value.length === 0))
      return say.nothing;
    if (Array.isArray(value)) return value.map((each) => said(each, choices, called)).join(', ');
    if (typeof value === 'boolean') return value ? say.yes : say.no;
    if (typeof value === 'number') return choices?.get(String(value)) ?? numbers.decimal(value);
    const text = typeof value === 'string' ? value : JSON.stringify(value);
    if (choices?.has(text)) return choices.get(text) ?? text;
    if (isCalendarDate(text)) return dates.long(text);
    return isMonthDay(text) ? dates.yearly(text) : (called[text] ?? text);
  };
}
