/** BulkBar: how many rows are selected and what can be done with all of them at once; it sticks to the lower edge. */
import { useMessages } from '../../messages/index.ts';
import { Button } from '../action/button.tsx';
import type { Selection } from './column.ts';
import './bulk-bar.css';

export function BulkBar({ selection }: { selection: Selection }) {
  const { ui } = useMessages();
  return (
    <div className="bulk-bar" role="group" aria-label={ui.forSelected}>
      <p className="bulk-count" role="status">
        {ui.selected(selection.ids.size)}
      </p>
      {selection.actions([...selection.ids])}
      <Button look="quiet" onClick={() => selection.onChange(new Set())}>
        {ui.clearSelection}
      </Button>
    </div>
  );
}
