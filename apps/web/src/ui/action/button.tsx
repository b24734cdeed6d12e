/**
 * Button: one thing that happens here. `primary` once a screen, `plain` for the rest, `quiet` inside rows, `danger` for what
 * loses something. While `busy` it keeps its place and size, says so to assistive technology and takes no second press.
 */
import type { ComponentProps, ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import './button.css';

export type ButtonLook = 'primary' | 'plain' | 'quiet' | 'danger';

export interface ButtonProps extends Omit<ComponentProps<'button'>, 'className'> {
  look?: ButtonLook;
  busy?: boolean;
  /** Fills the width of what holds it, as the main button of a phone's form does. */
  wide?: boolean;
  children: ReactNode;
}

export function Button({
  look = 'plain',
  busy = false,
  wide = false,
  type = 'button',
  onClick,
  children,
  ...rest
}: ButtonProps) {
  const { ui } = useMessages();
  return (
    <button
      {...rest}
      type={type}
      className={`button button-${look}${wide ? ' button-wide' : ''}`}
      aria-disabled={busy || undefined}
      onClick={(event) => {
        // Not the disabled attribute: it would throw the keyboard's focus back to the top of the page.
        if (busy) event.preventDefault();
        else onClick?.(event);
      }}
    >
      {busy && <span className="button-busy" aria-hidden="true" />}
      {children}
      {busy && <span className="only-heard"> {ui.saving}</span>}
    </button>
  );
}
