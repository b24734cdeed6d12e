/** What a field knows of the form around it: the errors by field name, and where to leave its label for the error summary. */
import { createContext } from 'react';

export interface FormFields {
  id: string;
  errors: Readonly<Record<string, string>>;
  labels: Map<string, string>;
  /** Of a field that offers choices, the words of each value. */
  choices: Map<string, ReadonlyMap<string, string>>;
}

export const FormFieldsContext = createContext<FormFields | null>(null);

/** A field's element id; the summary links to it. Dots of a path (`lines.0.units`) are kept out of ids for selectors' sake. */
export const fieldId = (formId: string, name: string): string => `${formId}-${name.replaceAll('.', '-')}`;
