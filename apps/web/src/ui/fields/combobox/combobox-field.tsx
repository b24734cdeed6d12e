/**
 * ComboboxField: one of many, found by typing. The options come from outside (usually a query keyed by the text that `onText` tells, so that
 * a thousand plants never travel to the phone) and say which text they answer: those of an older text cannot be chosen. The list opens when
 * somebody enters the field, types, or asks for it, and never by itself; a choice closes it, scrolling does not.
 */
import { type KeyboardEvent, type RefObject, useContext, useEffect, useRef, useState } from 'react';
import {
  Button as PressButton,
  ComboBox,
  ComboBoxStateContext,
  Input,
  ListBox,
  ListBoxItem,
  Popover,
} from 'react-aria-components';
import { useMessages } from '../../../messages/index.ts';
import { LayerContext } from '../../overlay/layer.ts';
import { FieldFrame, useField, type Field, type FieldProps } from '../field.tsx';
import { type Answering, useHeldOptions } from './held-options.ts';
import { usePlacedList } from './placed-list.ts';
import { usePointerOnList } from './pointer-on-list.ts';
import '../../action/menu.css';
import './combobox-field.css';

export interface Option {
  id: string;
  label: string;
  /** A second line, such as the common name or what is free. */
  detail?: string;
  /** Set in italics, as scientific names are. */
  scientific?: boolean;
}

/** An option with what choosing it means, so that a choice holds whatever the query answers afterwards. */
export interface Offer<Meant> extends Option {
  meant: Meant;
}

export interface ComboboxFieldProps<Meant> extends FieldProps, Answering<Offer<Meant>> {
  value: Option | null;
  onChange: (chosen: Meant | null) => void;
  onText: (text: string) => void;
  placeholder?: string;
}

export function ComboboxField<Meant>({
  value,
  onChange,
  options,
  answers,
  onText,
  placeholder,
  ...props
}: ComboboxFieldProps<Meant>) {
  const field = useField(props);
  const { ui } = useMessages();
  const [isOpen, setOpen] = useState(false);
  // What is being typed; null where the field shows its value.
  const [typed, setTyped] = useState<string | null>(null);
  const label = value?.label ?? '';
  const wanted = typed?.trim() ?? '';
  useEffect(() => onText(wanted), [wanted, onText]);
  const { side, isPressed, listeners } = usePointerOnList(isOpen);
  const { shown, isCurrent } = useHeldOptions({ options, answers }, wanted, { isOpen, isPressed });
  const line = useRef<HTMLDivElement>(null);
  const layer = useContext(LayerContext);
  const moves = usePlacedList(line, isOpen);

  return (
    <FieldFrame field={field} {...props}>
      <ComboBox
        className="combobox"
        aria-labelledby={field.labelId}
        items={shown}
        disabledKeys={isCurrent ? [] : shown.map(({ id }) => id)}
        inputValue={typed ?? label}
        onInputChange={(text) => {
          setTyped(text === label || text === '' ? null : text);
          // An emptied field holds nothing from then on: what it held before must not come back when it is left.
          if (text.trim() === '' && value) onChange(null);
        }}
        selectedKey={value?.id ?? null}
        onSelectionChange={(key) => {
          // Told of what is chosen, and of what was chosen before when the field is left or Escape is pressed: words that name nothing go.
          const chosen = key === value?.id ? undefined : shown.find(({ id }) => id === key);
          setTyped(null);
          if (chosen) onChange(chosen.meant);
        }}
        onBlur={() => setTyped(null)}
        onOpenChange={setOpen}
        menuTrigger="manual"
        allowsEmptyCollection
        defaultFilter={() => true}
      >
        <ComboboxLine
          line={line}
          control={field.control}
          placeholder={placeholder ?? ui.typeToSearch}
          isTyped={typed !== null}
        />
        {/* It asks to be closed when something scrolls, as entering a field below the fold does: it is not listened to and follows instead. */}
        <Popover
          className="popover"
          placement={side ?? 'bottom'}
          shouldFlip={side === null}
          offset={4}
          // It is placed anew when one of its numbers changes; this one moves nothing in a box without an arrow.
          arrowBoundaryOffset={moves}
          shouldUpdatePosition={!isPressed}
          isOpen={isOpen}
          UNSTABLE_portalContainer={layer?.current ?? undefined}
        >
          <div {...listeners}>
            <ListBox<Offer<Meant>>
              className="menu combobox-list"
              renderEmptyState={() => <div className="menu-item">{isCurrent ? ui.noMatch : ui.searching}</div>}
            >
              {(option) => (
                <ListBoxItem id={option.id} className="menu-item" textValue={option.label}>
                  <span>
                    {option.scientific ? <i lang="la">{option.label}</i> : option.label}
                    {option.detail && <span className="choice-hint">{option.detail}</span>}
                  </span>
                </ListBoxItem>
              )}
            </ListBox>
          </div>
        </Popover>
      </ComboBox>
    </FieldFrame>
  );
}

function ComboboxLine({
  line,
  control,
  placeholder,
  isTyped,
}: {
  line: RefObject<HTMLDivElement | null>;
  control: Field['control'];
  placeholder: string;
  isTyped: boolean;
}) {
  const { ui } = useMessages();
  const state = useContext(ComboBoxStateContext);
  const holdEnter = (event: KeyboardEvent) => {
    // Enter takes what is marked. Before anything can be, it must neither close the list nor send the form with what was there before.
    if (event.key !== 'Enter' || !isTyped || !state?.isOpen || state.selectionManager.focusedKey !== null) return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div className="combobox-line" ref={line} onKeyDownCapture={holdEnter}>
      <Input
        {...control}
        className="field-box"
        placeholder={placeholder}
        autoComplete="off"
        spellCheck="false"
        onFocus={() => {
          // Coming back from the list itself is not entering the field.
          if (state && !state.isFocused) state.open(null, 'focus');
        }}
        onInput={() => state?.open(null, 'input')}
      />
      <PressButton className="combobox-open" aria-label={ui.openList}>
        <span className="menu-mark" aria-hidden="true" />
      </PressButton>
    </div>
  );
}
