/**
 * Submit: the button that ends a command form, and beside it what became of the entry. While no answer has come it says that the
 * entry is kept; "Saved" is said only after the server answered.
 */
import type { ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../../ui/action/index.ts';
import { FormActions } from '../../ui/form/index.ts';
import type { CommandState } from '../outbox/index.ts';

export interface SubmitProps {
  form: { busy: boolean; state: CommandState; restart: () => void };
  look?: 'primary' | 'danger';
  children: ReactNode;
  /** Further buttons of the row. */
  others?: ReactNode;
}

export function Submit({ form, look = 'primary', children, others }: SubmitProps) {
  const { ui } = useMessages();
  return (
    <div className="stack">
      <FormActions>
        <Button type="submit" look={look} busy={form.busy}>
          {children}
        </Button>
        {/* Nobody has to stand and wait for a signal: the entry is kept, the next one can be typed. */}
        {form.state === 'waiting' && <Button onClick={() => form.restart()}>{ui.enterNext}</Button>}
        {others}
      </FormActions>
      <p role="status">{form.state === 'waiting' ? ui.kept : form.state === 'saved' ? ui.saved : ''}</p>
    </div>
  );
}
