/** LineWhy: why a line holds these plants and not others; asked for only when somebody wants to know. */
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { trpc } from '../../../../lib/api/index.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';

export function LineWhy({ lineId }: { lineId: string }) {
  const words = useMessages().promises.why;
  const [isOpen, setOpen] = useState(false);
  const query = useQuery({ ...trpc.promises.explainLine.queryOptions({ lineId }), enabled: isOpen });
  return (
    <details className="foldable" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.title}</summary>
      {isOpen && (
        <Read query={query}>
          {({ rows, linesBefore }) => (
            <ul className="plain-list">
              {rows.map((row) => (
                <li key={`${row.supplyId}/${row.reason}`}>
                  {words.reasons[row.reason](row)}
                  {row.sooner.map((sooner) => ` ${words.sooner(sooner)}`)}
                </li>
              ))}
              <li>{words.turn(linesBefore)}</li>
            </ul>
          )}
        </Read>
      )}
    </details>
  );
}
