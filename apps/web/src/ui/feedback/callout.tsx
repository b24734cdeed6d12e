/**
 * Callout: a sentence the reader must not miss. `caution` where work can hurt or a plant can be lost, `note` for what is good to
 * know, `refusal` for what was not possible, with the numbers and the way out. Its word stands before the text.
 */
import type { ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import './callout.css';

export interface CalloutProps {
  tone: 'caution' | 'note' | 'refusal';
  title?: string;
  children: ReactNode;
  actions?: ReactNode;
  /** Read out at once where it appears after an action. */
  announce?: boolean;
}

export function Callout({ tone, title, children, actions, announce = false }: CalloutProps) {
  const { ui } = useMessages();
  return (
    <div className={`callout callout-${tone}`} role={announce ? 'alert' : undefined}>
      <p className="callout-word">{title ? `${ui[tone]}: ${title}` : ui[tone]}</p>
      <div className="callout-text">{children}</div>
      {actions && <div className="row">{actions}</div>}
    </div>
  );
}
