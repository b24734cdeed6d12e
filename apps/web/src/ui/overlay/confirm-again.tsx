/**
 * ConfirmAgain asks before what cannot be reversed, and only then: everything else offers undo instead. The words say what
 * will be gone; the button repeats the verb, and focus starts on the way out.
 */
import type { ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../action/button.tsx';
import { FormActions } from '../form/form.tsx';
import { Dialog } from './dialog.tsx';

export interface ConfirmAgainProps {
  open: boolean;
  title: string;
  /** What will be gone, and that it stays gone. */
  children: ReactNode;
  /** The verb: "Discard the entry". */
  confirm: string;
  busy?: boolean;
  onConfirm: () => void;
  onClose: () => void;
}

export function ConfirmAgain({ open, title, children, confirm, busy = false, onConfirm, onClose }: ConfirmAgainProps) {
  const { ui } = useMessages();
  return (
    <Dialog open={open} onClose={onClose} title={title}>
      <div className="stack">
        <div>{children}</div>
        <FormActions>
          <Button look="plain" onClick={onClose} autoFocus>
            {ui.cancel}
          </Button>
          <Button look="danger" busy={busy} onClick={onConfirm}>
            {confirm}
          </Button>
        </FormActions>
      </div>
    </Dialog>
  );
}
