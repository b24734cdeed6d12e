/** What a change of rules, windows or the freeze day would do to what stands in pots, asked before it is made. */
import { readInput, potLife } from '@rootclock/contracts';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { trpc } from '../../lib/api/index.ts';
import { useFormat } from '../../lib/format/index.ts';
import { useRested } from '../../lib/use-rested.ts';
import { useMessages } from '../../messages/index.ts';
import { PlantName } from '../plants/plant-name.tsx';
import './settings.css';

const PAUSE_MS = 400;

/** The change as soon as it is whole, a moment after the last key. */
function useWholeChange(change: unknown) {
  const rested = useRested(JSON.stringify({ change }), PAUSE_MS);
  const read = readInput(potLife.previewChange, JSON.parse(rested));
  return read.ok ? read.data : null;
}

/** `change` is a command's name and its body, which may still be incomplete: then nothing is said. */
export function Preview({ change }: { change: { command: string; body: unknown } }) {
  const { preview: say } = useMessages().rules;
  const whole = useWholeChange(change);
  const query = useQuery({
    ...trpc.potLife.previewChange.queryOptions(
      whole ?? { change: { command: 'setFreezeDay', body: { freezeMd: '01-01' } } },
    ),
    enabled: whole !== null,
    placeholderData: keepPreviousData,
  });
  if (whole === null || query.data === undefined) return null;
  const { open, earlier, later, nowPast, examples } = query.data;
  return (
    <section className="preview" aria-label={say.title} aria-live="polite" aria-busy={query.isFetching || undefined}>
      <h3>{say.title}</h3>
      {earlier + later === 0 ? (
        <p>{say.none(open)}</p>
      ) : (
        <>
          <ul className="preview-counts">
            {earlier > 0 && <li>{say.earlier(earlier)}</li>}
            {nowPast > 0 && (
              <li>
                <strong>{say.nowPast(nowPast)}</strong>
              </li>
            )}
            {later > 0 && <li>{say.later(later)}</li>}
            <li>{say.of(open)}</li>
          </ul>
          <p className="preview-lead">{say.examples}</p>
          <ul className="preview-examples">
            {examples.map((moved) => (
              <Example key={moved.id} moved={moved} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Example({ moved }: { moved: potLife.MovedSubject }) {
  const { preview: say } = useMessages().rules;
  const { dates } = useFormat();
  const day = (on: string | null) => (on === null ? say.noDay : dates.short(on));
  return (
    <li>
      <strong>{moved.code}</strong> <PlantName name={moved.scientificName} />:{' '}
      <span className="figure">{say.move(day(moved.fromOn), day(moved.toOn))}</span>
    </li>
  );
}
