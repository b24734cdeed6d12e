/** Pager: which rows of how many, and the way to the neighbouring pages. Nothing is shown when one page holds all. */
import { useMessages } from '../../messages/index.ts';
import { Button } from '../action/button.tsx';
import './pager.css';

export interface PagerProps {
  /** From 1. */
  page: number;
  perPage: number;
  total: number;
  onPage: (page: number) => void;
}

export function Pager({ page, perPage, total, onPage }: PagerProps) {
  const { ui } = useMessages();
  const last = Math.max(1, Math.ceil(total / perPage));
  if (last === 1) return null;
  const from = Math.min((page - 1) * perPage + 1, total);
  return (
    <nav className="pager" aria-label={ui.pages}>
      <Button disabled={page <= 1} onClick={() => onPage(page - 1)} aria-label={ui.previousPage}>
        ←
      </Button>
      <p className="pager-range" role="status">
        {ui.range(from, Math.min(page * perPage, total), total)}
      </p>
      <Button disabled={page >= last} onClick={() => onPage(page + 1)} aria-label={ui.nextPage}>
        →
      </Button>
    </nav>
  );
}
