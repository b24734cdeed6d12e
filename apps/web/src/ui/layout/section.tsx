/** Section: a part of a page with its own heading and, at its right, what can be done there. `level` keeps the headings in order. */
import { useId, type ReactNode } from 'react';
import './section.css';

export interface SectionProps {
  title: string;
  /** A figure or words beside the heading, such as how many. */
  aside?: ReactNode;
  level?: 2 | 3;
  actions?: ReactNode;
  children: ReactNode;
}

export function Section({ title, aside, level = 2, actions, children }: SectionProps) {
  const id = useId();
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section className="section" aria-labelledby={id}>
      <div className="section-head">
        <Heading id={id}>{title}</Heading>
        {aside && <span className="section-aside">{aside}</span>}
        {actions && <div className="section-actions row">{actions}</div>}
      </div>
      {children}
    </section>
  );
}

/** Sheet of paper: what belongs together, lifted off the page. */
export function Panel({ children }: { children: ReactNode }) {
  return <div className="panel">{children}</div>;
}
