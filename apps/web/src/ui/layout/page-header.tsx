/**
 * PageHeader: where the reader is. A small kicker above the title says what kind of thing this is, `back` leads to where it
 * belongs, `sign` holds the pot sign, `actions` the page's own verbs. It also sets the document's title, and its h1
 * takes focus when a route changes (the shell does that).
 */
import { useEffect, type ReactNode } from 'react';
import { Link } from '@tanstack/react-router';
import './page-header.css';

export interface PageHeaderProps {
  title: ReactNode;
  /** The plain words of the title where it holds more than text. */
  titleText?: string;
  kicker?: ReactNode;
  back?: { to: string; label: string };
  sign?: ReactNode;
  /** One or two lines of facts under the title. */
  facts?: ReactNode;
  actions?: ReactNode;
}

const PRODUCT = 'Rootclock';

export function PageHeader({ title, titleText, kicker, back, sign, facts, actions }: PageHeaderProps) {
  const words = titleText ?? (typeof title === 'string' ? title : undefined);
  useEffect(() => {
    document.title = words ? `${words} – ${PRODUCT}` : PRODUCT;
  }, [words]);
  return (
    <header className="page-header">
      {back && (
        <Link to={back.to} className="page-back">
          <span aria-hidden="true">← </span>
          {back.label}
        </Link>
      )}
      <div className="page-header-line">
        {sign}
        <div className="page-header-words">
          {kicker && <p className="page-kicker">{kicker}</p>}
          <h1 tabIndex={-1}>{title}</h1>
          {facts && <div className="page-facts">{facts}</div>}
        </div>
        {actions && <div className="page-actions row">{actions}</div>}
      </div>
    </header>
  );
}
