/**
 * FilterBar: the search box always in sight, further filters folded away on a phone with the number of those set. The filters
 * themselves are ordinary fields; their values live in the page's address (`useListSearch` in lib/list).
 */
import { useEffect, useState, type ReactNode } from 'react';
import { useMessages } from '../../messages/index.ts';
import { Button } from '../action/button.tsx';
import { TextField } from '../fields/text-field.tsx';
import './filter-bar.css';

export interface FilterBarProps {
  /** Left out where a list cannot be searched. */
  search?: { label: string; value: string; onChange: (value: string) => void };
  children?: ReactNode;
  /** How many filters are set besides the search. */
  set: number;
  onClear: () => void;
}

const PAUSE_MS = 250;

function SearchBox({ label, value, onChange }: NonNullable<FilterBarProps['search']>) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  useEffect(() => {
    if (text === value) return;
    const wait = setTimeout(() => onChange(text), PAUSE_MS);
    return () => clearTimeout(wait);
  }, [text, value, onChange]);
  return (
    <TextField
      name="q"
      type="search"
      label={label}
      optional="unsaid"
      value={text}
      onChange={setText}
      autoComplete="off"
    />
  );
}

export function FilterBar({ search, children, set, onClear }: FilterBarProps) {
  const { ui } = useMessages();
  const [open, setOpen] = useState(false);
  return (
    <div className="filter-bar" role="search">
      <div className="filter-line">
        {search && <SearchBox {...search} />}
        {children && (
          <span className="filter-fold">
            <Button aria-expanded={open} onClick={() => setOpen(!open)}>
              {set > 0 ? ui.filterCount(set) : ui.filters}
            </Button>
          </span>
        )}
      </div>
      {children && (
        <div className="filter-fields" data-open={open || undefined}>
          {children}
          {set > 0 && (
            <Button look="quiet" onClick={onClear}>
              {ui.clearFilters}
            </Button>
          )}
        </div>
      )}
    </div>
  );
}
