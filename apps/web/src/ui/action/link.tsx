/**
 * TextLink goes to another page and reads as a link; ButtonLink does the same and looks like a button; RowLink makes a whole
 * row or card lead somewhere while only its words are the link. Addresses come from `lib/paths.ts`, so that a feature can
 * point at a later one without importing it.
 */
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import type { ButtonLook } from './button.tsx';
import './button.css';
import './link.css';

interface LinkProps {
  to: string;
  /** What stands behind the question mark of the address. */
  search?: Record<string, string | number | boolean | undefined>;
  children: ReactNode;
  'aria-label'?: string;
}

export function TextLink({ to, children, ...rest }: LinkProps) {
  return (
    <Link to={to} className="text-link" {...rest}>
      {children}
    </Link>
  );
}

export function RowLink({ to, children, ...rest }: LinkProps) {
  return (
    <Link to={to} className="text-link row-link" {...rest}>
      {children}
    </Link>
  );
}

export function ButtonLink({
  to,
  look = 'plain',
  wide = false,
  children,
  ...rest
}: LinkProps & { look?: ButtonLook; wide?: boolean }) {
  return (
    <Link to={to} className={`button button-${look}${wide ? ' button-wide' : ''}`} {...rest}>
      {children}
    </Link>
  );
}
