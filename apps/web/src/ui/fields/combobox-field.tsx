/**
 * ComboboxField: one of many, found by typing. The list comes from outside (usually a query keyed by the typed text, told
 * through `onText` after a short pause), so that a thousand plants never travel to the phone.
 */
import { useEffect, useState } from 'react';
import { Button as PressButton, ComboBox, Input, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { useMessages } from '../../messages/index.ts';
import { FieldFrame, useField, type FieldProps } from './field.tsx';
import '../action/menu.css';
import './combobox-field.css';

export interface Option {
  id: string;
  label: string;
  /** A second line, such as the common name or what is free. */
  detail?: string;
  /** Set in italics, as scientific names are. */
  scientific?: boolean;
}

export interface ComboboxFieldProps extends FieldProps {
  value: Option | null;
  onChange: (value: Option | null) => void;
  options: readonly Option[];
  onText: (text: string) => void;
  loading?: boolean;
  placeholder?: string;
}

const PAUSE_MS = 180;

export function ComboboxField({ value, onChange, options, onText, loading = false, placeholder, ...props }: ComboboxFieldProps) {
  const field = useField(props);
  const { ui } = useMessages();
  const [text, setText] = useState(value?.label ?? '');
  const chosenLabel = value?.label ?? '';
  useEffect(() => setText(chosenLabel), [chosenLabel]);
  useEffect(() => {
    const wait = setTimeout(() => onText(text === chosenLabel ? '' : text.trim()), PAUSE_MS);
    return () => clearTimeout(wait);
  }, [text, chosenLabel, onText]);

  return (
    <FieldFrame field={field} {...props}>
      <ComboBox
        className="combobox"
        aria-labelledby={field.labelId}
        items={options}
        inputValue={text}
        onInputChange={setText}
        selectedKey={value?.id ?? null}
        onSelectionChange={(key) => {
          const chosen = options.find((option) => option.id === key);
          if (chosen) {
            setText(chosen.label);
            onChange(chosen);
          } else if (key === null && text === '') onChange(null);
        }}
        onBlur={() => {
          // Words that name nothing in the list must not look like a choice.
          if (text.trim() === '') onChange(null);
          else if (text !== chosenLabel) setText(chosenLabel);
        }}
        menuTrigger="focus"
        allowsEmptyCollection
        defaultFilter={() => true}
      >
        <div className="combobox-line">
          <Input {...field.control} className="field-box" placeholder={placeholder ?? ui.typeToSearch} autoComplete="off" spellCheck="false" />
          <PressButton className="combobox-open" aria-label={ui.openList}>
            <span className="menu-mark" aria-hidden="true" />
          </PressButton>
        </div>
        <Popover className="popover" offset={4}>
          <ListBox<Option> className="menu" renderEmptyState={() => <div className="menu-item">{loading ? ui.searching : ui.noMatch}</div>}>
            {(option) => (
              <ListBoxItem id={option.id} className="menu-item" textValue={option.label}>
                <span>
                  {option.scientific ? <i lang="la">{option.label}</i> : option.label}
                  {option.detail && <span className="choice-hint">{option.detail}</span>}
                </span>
              </ListBoxItem>
            )}
          </ListBox>
        </Popover>
      </ComboBox>
    </FieldFrame>
  );
}
