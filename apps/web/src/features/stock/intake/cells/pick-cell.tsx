/**
 * PickCell: one of many by typing, for lists that are typed fast. What was typed stays until it means one thing; leaving the cell takes
 * what it can only mean, also when the answer comes later. Arrow keys choose, Enter and Tab take, nothing is guessed.
 */
import { useEffect, useId, useState, type KeyboardEvent } from 'react';
import { useMessages } from '../../../../messages/index.ts';
import { FieldFrame, useField, type FieldProps, type Option } from '../../../../ui/fields/index.ts';
import './pick-cell.css';

export interface Picked {
  id: string;
  label: string;
}

export interface PickCellProps extends FieldProps {
  value: Picked | null;
  /** As typed; the label of the value once there is one. */
  text: string;
  onText: (text: string) => void;
  onPick: (id: string) => void;
  options: readonly Option[];
  /** What the text can only mean. */
  settledId: string | null;
  /** Said when the cell was left and the text means nothing, or too much. */
  problem: string | null;
  loading?: boolean;
  scientific?: boolean;
}

export function PickCell({
  value,
  text,
  onText,
  onPick,
  options,
  settledId,
  problem,
  loading = false,
  scientific = false,
  ...props
}: PickCellProps) {
  const { ui } = useMessages();
  const listId = useId();
  const [focused, setFocused] = useState(false);
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState<string | null>(null);
  const unsettled = value === null && text.trim() !== '';
  const field = useField({
    ...props,
    error: props.error ?? (!focused && unsettled && !loading ? (problem ?? undefined) : undefined),
  });
  useEffect(() => {
    if (!focused && unsettled && settledId !== null) onPick(settledId);
  }, [focused, unsettled, settledId, onPick]);

  const chosen =
    active !== null && options.some((option) => option.id === active) ? active : value === null ? settledId : null;
  const take = (id: string) => {
    onPick(id);
    setOpen(false);
    setActive(null);
  };
  const step = (by: 1 | -1) => {
    const at = options.findIndex((option) => option.id === chosen);
    const next = options[at === -1 ? (by === 1 ? 0 : options.length - 1) : (at + by + options.length) % options.length];
    setOpen(true);
    setActive(next?.id ?? null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      step(event.key === 'ArrowDown' ? 1 : -1);
    } else if (event.key === 'Escape' && open) {
      event.stopPropagation();
      setOpen(false);
    } else if ((event.key === 'Enter' || event.key === 'Tab') && open && chosen !== null) {
      take(chosen);
    }
  };
  const shown = open && focused && (options.length > 0 || text.trim() !== '');

  return (
    <FieldFrame field={field} {...props}>
      <div className="pick-cell">
        <input
          {...field.control}
          className={scientific && value ? 'field-box pick-taxon' : 'field-box'}
          type="text"
          role="combobox"
          aria-autocomplete="list"
          aria-expanded={shown}
          aria-controls={shown ? listId : undefined}
          aria-activedescendant={shown && chosen ? `${listId}-${chosen}` : undefined}
          enterKeyHint="next"
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          value={text}
          onFocus={(event) => {
            setFocused(true);
            event.target.select();
          }}
          onBlur={() => {
            setFocused(false);
            setOpen(false);
          }}
          onClick={() => setOpen(true)}
          onChange={(event) => {
            setOpen(true);
            setActive(null);
            onText(event.target.value);
          }}
          onKeyDown={onKeyDown}
        />
        {shown && (
          <div id={listId} role="listbox" aria-label={props.label} className="popover pick-list">
            {options.length === 0 && <p className="menu-item">{loading ? ui.searching : ui.noMatch}</p>}
            {options.map((option) => (
              <button
                key={option.id}
                id={`${listId}-${option.id}`}
                type="button"
                role="option"
                tabIndex={-1}
                aria-selected={option.id === chosen}
                // While the answer is on its way the list is an older text's, and may change under the finger.
                aria-disabled={loading || undefined}
                className="menu-item pick-option"
                // Pressing must not take the focus from the cell: leaving it would settle something else.
                onMouseDown={(event) => event.preventDefault()}
                onClick={() => !loading && take(option.id)}
              >
                <span>
                  {option.scientific ? <i>{option.label}</i> : option.label}
                  {option.detail && <span className="choice-hint">{option.detail}</span>}
                </span>
              </button>
            ))}
          </div>
        )}
      </div>
    </FieldFrame>
  );
}
