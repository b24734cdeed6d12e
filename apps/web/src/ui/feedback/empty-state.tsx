/**
 * EmptyState: why there is nothing here. `nothing-yet` says how to begin, `nothing-matches` how to widen, `all-done` that the
 * work is finished, `failed` (or not allowed) what happened and how to try again. Four different looks, told apart by shape and word.
 */
import type { ReactNode } from 'react';
import './empty-state.css';

export interface EmptyStateProps {
  kind: 'nothing-yet' | 'nothing-matches' | 'all-done' | 'failed';
  title: string;
  children?: ReactNode;
  actions?: ReactNode;
}

const MARKS: Record<EmptyStateProps['kind'], ReactNode> = {
  'nothing-yet': <path d="M10 12h28l-4 26H14z" strokeDasharray="4 4" />,
  'nothing-matches': <path d="M31 31l9 9M20 8a12 12 0 1 1 0 24 12 12 0 0 1 0-24zM13 20h14" />,
  'all-done': <path d="M8 25l11 11 21-25" strokeWidth="4" />,
  failed: <path d="M24 6l19 34H5zM24 18v11M24 33v2" />,
};

export function EmptyState({ kind, title, children, actions }: EmptyStateProps) {
  return (
    <div className={`empty empty-${kind}`} role={kind === 'failed' ? 'alert' : undefined}>
      <svg
        className="empty-mark"
        viewBox="0 0 48 48"
        fill="none"
        stroke="currentColor"
        strokeWidth="2.5"
        aria-hidden="true"
      >
        {MARKS[kind]}
      </svg>
      <div className="empty-words">
        <p className="empty-title">{title}</p>
        {children && <div className="empty-text">{children}</div>}
        {actions && <div className="row">{actions}</div>}
      </div>
    </div>
  );
}
