/**
 * Form: fields find their errors by name; what is wrong is also listed above, and that list takes focus after every refused
 * try (`attempt` counts them). `useCommandForm` in lib/form fills all of this for a form that ends in a command.
 */
import { useEffect, useId, useMemo, useRef, type ReactNode } from 'react';
import { FormFieldsContext, type FormFields } from './form-context.ts';
import { Callout } from '../feedback/callout.tsx';
import { ErrorSummary } from './error-summary.tsx';
import './form.css';

export interface FormProps {
  /** Sentences by field name. */
  errors?: Readonly<Record<string, string>>;
  /** What is wrong with the whole, belonging to no field. */
  problem?: ReactNode;
  attempt?: number;
  /** What the reader should know before filling it in. */
  notice?: ReactNode;
  /** What has to be decided first; it may speak of the form's fields. */
  above?: ReactNode;
  onSubmit: () => void;
  children: ReactNode;
  'aria-label'?: string;
}

const NO_ERRORS: Readonly<Record<string, string>> = {};

export function Form({
  errors = NO_ERRORS,
  problem,
  attempt = 0,
  notice,
  above,
  onSubmit,
  children,
  ...rest
}: FormProps) {
  const id = useId();
  const labels = useRef(new Map<string, string>());
  const choices = useRef(new Map<string, ReadonlyMap<string, string>>());
  const fields = useMemo<FormFields>(
    () => ({ id, errors, labels: labels.current, choices: choices.current }),
    [id, errors],
  );
  const summary = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (attempt > 0) summary.current?.focus();
  }, [attempt]);
  return (
    <form
      {...rest}
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        event.stopPropagation();
        onSubmit();
      }}
    >
      <FormFieldsContext value={fields}>
        <ErrorSummary ref={summary} formId={id} errors={errors} problem={problem} labels={labels.current} />
        {notice && <Callout tone="note">{notice}</Callout>}
        {above}
        {children}
      </FormFieldsContext>
    </form>
  );
}

/** The row of buttons that ends a form; on a phone it stays in reach above the keyboard. */
export function FormActions({ children }: { children: ReactNode }) {
  return <div className="form-actions">{children}</div>;
}

/** Fields that belong together under a heading of their own. */
export function FieldGroup({ legend, children }: { legend: string; children: ReactNode }) {
  return (
    <fieldset className="field-group">
      <legend>{legend}</legend>
      {children}
    </fieldset>
  );
}
