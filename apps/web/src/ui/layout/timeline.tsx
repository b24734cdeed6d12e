/**
 * Timeline: a story told by days. The day stands in the notebook's margin, what happened beside it; consecutive items of one day
 * share it. An item that was taken back is struck through and says so in `note`.
 */
import type { ReactNode } from 'react';
import './timeline.css';

export interface TimelineItem {
  id: string;
  /** Already formatted for the reader; `dayOn` is the machine's form. */
  day: string;
  dayOn: string;
  title: ReactNode;
  children?: ReactNode;
  note?: ReactNode;
  reversed?: boolean;
  actions?: ReactNode;
}

export interface TimelineProps {
  items: readonly TimelineItem[];
  label: string;
}

export function Timeline({ items, label }: TimelineProps) {
  return (
    <ol className="timeline" aria-label={label}>
      {items.map((item, index) => (
        <li key={item.id} className="timeline-item">
          <div className="timeline-margin">
            <time dateTime={item.dayOn} className={items[index - 1]?.dayOn === item.dayOn ? 'only-heard' : undefined}>
              {item.day}
            </time>
          </div>
          <div className="timeline-text">
            <p className={item.reversed ? 'timeline-title timeline-struck' : 'timeline-title'}>{item.title}</p>
            {item.children}
            {item.note && <p className="timeline-note">{item.note}</p>}
          </div>
          {item.actions && <div className="timeline-actions">{item.actions}</div>}
        </li>
      ))}
    </ol>
  );
}
