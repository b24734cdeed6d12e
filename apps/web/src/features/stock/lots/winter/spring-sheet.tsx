/** SpringSheet: what lives after winter, lot by lot, of one lot or of all that stands at a place, saved as one entry. */
import { useQuery } from '@tanstack/react-query';
import { stock as contracts } from '@rootclock/contracts';
import { type Failure, trpc } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { Read } from '../../../../lib/read/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { Callout } from '../../../../ui/feedback/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { Sheet } from '../../../../ui/overlay/index.ts';
import { DayAndNote } from '../fields/day-note.tsx';
import { useLastDay } from '../fields/last.ts';
import { MayBeDormant } from '../fields/may-be-dormant.tsx';
import { useUndoable } from '../undo.ts';
import { countsOf, isCounted, keyOf, type SpringLine } from './spring-lines.ts';
import { SpringRow, type SpringRowData } from './spring-row.tsx';
import './winter.css';

export interface SpringSheetProps {
  /** One of the two: the lot, or the place with all that lies in it. */
  lotId?: string;
  placeId?: string;
  /** The code of it, for people. */
  name: string;
  onClose: () => void;
}

export function SpringSheet({ lotId, placeId, name, onClose }: SpringSheetProps) {
  const { winter: say } = useMessages();
  const query = useQuery(trpc.stock.readSpringSheet.queryOptions(lotId ? { lotId } : { placeId: placeId ?? '' }));
  return (
    <Sheet open onClose={onClose} title={say.title(name)}>
      <Read query={query}>
        {(rows) =>
          rows.length === 0 ? <p>{say.nothing}</p> : <SpringForm rows={rows} name={name} onClose={onClose} />
        }
      </Read>
    </Sheet>
  );
}

function SpringForm({ rows, name, onClose }: { rows: readonly SpringRowData[]; name: string; onClose: () => void }) {
  const { winter: say } = useMessages();
  const [day, keepDay] = useLastDay();
  const tell = useUndoable();
  const form = useCommandForm({
    command: useCommand('stock.countSpring', { title: say.title(name) }),
    contract: contracts.countSpring,
    initial: {
      lines: {} as Record<string, SpringLine>,
      happenedOn: day,
      note: '',
      bookDifferences: false,
      confirmed: false,
    },
    body: ({ lines, ...said }) => ({ ...said, counts: countsOf(rows, lines) }),
    onSaved: ({ entryId, upUnits, deadUnits, notUpUnits }, said) => {
      keepDay(said.happenedOn);
      tell(say.saved(upUnits, deadUnits, notUpUnits), entryId);
      onClose();
    },
  });
  const { lines } = form.values;
  const sent = rows.filter((row) => isCounted(lines[keyOf(row)])).map(keyOf);
  // What was confirmed for other numbers is asked again for these.
  const change = (key: string, line: SpringLine) =>
    form.set((before) => ({ lines: { ...before.lines, [key]: line }, bookDifferences: false, confirmed: false }));
  return (
    <Form {...form.props}>
      <p>{say.lead}</p>
      <MayBeDormant
        failure={form.failure}
        busy={form.busy}
        onWait={onClose}
        onConfirm={() => confirm({ confirmed: true })}
      />
      <Differs failure={form.failure} busy={form.busy} onBook={() => confirm({ bookDifferences: true })} />
      <ul className="spring-rows">
        {rows.map((row) => {
          const key = keyOf(row);
          const at = sent.indexOf(key);
          return (
            <SpringRow
              key={key}
              row={row}
              at={at === -1 ? null : at}
              line={lines[key]}
              onChange={(line) => change(key, line)}
            />
          );
        })}
      </ul>
      <DayAndNote day={form.field('happenedOn')} note={form.field('note')} />
      <Submit form={form}>{say.save}</Submit>
    </Form>
  );

  function confirm(said: { confirmed?: boolean; bookDifferences?: boolean }): void {
    form.set(said);
    form.submit({ ...form.values, ...said });
  }
}

type Difference = { lotId: string; placeId: string; lot: string; place: string; standing: number; counted: number };

/** Says which numbers do not sum and offers to book the difference. */
function Differs({ failure, busy, onBook }: { failure: Failure | null; busy: boolean; onBook: () => void }) {
  const { winter: say } = useMessages();
  if (failure?.code !== 'spring-count-differs') return null;
  const lots = (failure.data as { lots?: Difference[] } | undefined)?.lots ?? [];
  return (
    <Callout
      tone="refusal"
      title={say.differs}
      announce
      actions={
        <Button busy={busy} onClick={onBook}>
          {say.book}
        </Button>
      }
    >
      <ul>
        {lots.map(({ lotId, placeId, lot, place, standing, counted }) => (
          <li key={keyOf({ lotId, placeId })}>{say.differsLine(lot, place, standing, counted)}</li>
        ))}
      </ul>
      <p>{say.bookHint}</p>
    </Callout>
  );
}
