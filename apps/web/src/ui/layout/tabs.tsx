/**
 * PageTabs: the views of one thing, each with its own address, so that back, sharing and reloading work. The one in sight is
 * marked by aria-current, a thick rule and weight. Segments of a choice inside a form are RadioField's business.
 */
import { Link } from '@tanstack/react-router';
import './tabs.css';

export interface PageTab {
  to: string;
  label: string;
  /** A count behind the label. */
  count?: number;
  /** Only this very address counts as current, not what lies under it. */
  exact?: boolean;
}

export function PageTabs({ tabs, label }: { tabs: readonly PageTab[]; label: string }) {
  return (
    <nav aria-label={label} className="tabs">
      <ul className="tabs-list">
        {tabs.map((tab) => (
          <li key={tab.to}>
            <Link to={tab.to} className="tab" activeOptions={{ exact: tab.exact ?? false, includeSearch: false }}>
              {tab.label}
              {tab.count !== undefined && <span className="tab-count"> {tab.count}</span>}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
