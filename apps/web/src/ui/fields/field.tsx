/**
 * The frame of every field: label, hint and error, tied to the control by aria. Inside a Form a field finds its error by its
 * `name`; outside one it is given `error`. Build new kinds of field from `useField` and `FieldFrame`.
 */
import { useContext, useId, useLayoutEffect, type ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import { fieldId, FormFieldsContext } from '../form/form-context.ts';
import './field.css';

export interface FieldProps {
  /** The path of the value in the command's body, such as `units` or `lines.0.units`: errors find their field by it. */
  name: string;
  label: string;
  hint?: ReactNode;
  error?: string | undefined;
  /** Marked by a word; fields are required unless they say so. Filters are optional as a matter of course: `unsaid`. */
  optional?: boolean | 'unsaid';
}

export interface Field {
  id: string;
  labelId: string;
  error: string | undefined;
  /** Spread onto the control. */
  control: {
    id: string;
    name: string;
    'aria-describedby': string | undefined;
    'aria-invalid': true | undefined;
    'aria-required': true | undefined;
  };
}

export function useField(
  { name, label, hint, error, optional }: FieldProps,
  choices?: readonly { value: string; label: string }[],
): Field {
  const form = useContext(FormFieldsContext);
  const own = useId();
  const id = form ? fieldId(form.id, name) : own;
  // Before the summary's own effect, which reads the labels of all fields.
  useLayoutEffect(() => {
    form?.labels.set(name, label);
    return () => void form?.labels.delete(name);
  }, [form, name, label]);
  useLayoutEffect(() => {
    if (choices) form?.choices.set(name, new Map(choices.map((choice) => [choice.value, choice.label])));
  }, [form, name, choices]);
  const shown = error ?? form?.errors[name];
  const described = [hint ? `${id}-hint` : '', shown ? `${id}-error` : ''].filter(Boolean).join(' ');
  return {
    id,
    labelId: `${id}-label`,
    error: shown,
    control: {
      id,
      name,
      'aria-describedby': described || undefined,
      'aria-invalid': shown ? true : undefined,
      'aria-required': optional ? undefined : true,
    },
  };
}

export interface FieldFrameProps extends FieldProps {
  field: Field;
  /** A group of controls takes a legend instead of a label. */
  group?: boolean;
  children: ReactNode;
}

export function FieldFrame({ field, label, hint, optional, group = false, children }: FieldFrameProps) {
  const { ui } = useMessages();
  const words = (
    <>
      {label}
      {optional === true && <span className="field-optional"> ({ui.optional})</span>}
    </>
  );
  const below = (
    <>
      {hint && (
        <div className="field-hint" id={`${field.id}-hint`}>
          {hint}
        </div>
      )}
      {field.error && (
        <p className="field-error" id={`${field.id}-error`}>
          {field.error}
        </p>
      )}
    </>
  );
  if (group) {
    return (
      <fieldset
        className="field"
        id={field.id}
        tabIndex={-1}
        aria-describedby={field.control['aria-describedby']}
        data-invalid={field.error ? true : undefined}
      >
        <legend className="field-label">{words}</legend>
        {below}
        {children}
      </fieldset>
    );
  }
  return (
    <div className="field" data-invalid={field.error ? true : undefined}>
      <label className="field-label" htmlFor={field.id} id={field.labelId}>
        {words}
      </label>
      {below}
      {children}
    </div>
  );
}
