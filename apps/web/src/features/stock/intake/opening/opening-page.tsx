/** The opening list: what stands here when the records begin, typed from a list; kept on the device until it is taken in. */
import { stock as contracts } from '@rootclock/contracts';
import { GROWERS } from '@rootclock/domain';
import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import type { CommandAnswer } from '../../../../lib/api/commands.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { newId } from '../../../../lib/ids.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { onDevice } from '../../../../lib/remember.ts';
import { useLanguage, useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { DateField } from '../../../../ui/fields/index.ts';
import { Form } from '../../../../ui/form/index.ts';
import { PageHeader } from '../../../../ui/layout/index.ts';
import { ConfirmAgain } from '../../../../ui/overlay/index.ts';
import { StockTabs } from '../../stock-tabs.tsx';
import { useUndoable } from '../../lots/undo.ts';
import {
  filledRows,
  isBlank,
  isDraft,
  openingBody,
  type OpeningDraft,
  type OpeningRow as Row,
  rowBelow,
  unitsIn,
} from './opening-draft.ts';
import { OpeningRow } from './opening-row.tsx';
import { IntakeTabs, NotYours } from '../intake-tabs.tsx';
import { type TakenRow, TakenIn } from '../taken-in.tsx';
import { useSteady } from './use-steady.ts';
import './opening.css';

const DRAFT = 'opening.draft';
const KEPT_AFTER_MS = 200;

export function OpeningPage() {
  const { intake } = useMessages().stockIn;
  const { mayBe } = useSession();
  return (
    <>
      <StockTabs />
      <PageHeader title={intake.openingTitle} facts={intake.openingText} />
      <IntakeTabs />
      {mayBe(GROWERS) ? <OpeningList /> : <NotYours />}
    </>
  );
}

function OpeningList() {
  const { intake } = useMessages().stockIn;
  const language = useLanguage();
  const { today } = useSession();
  const tell = useUndoable();
  const [taken, setTaken] = useState<TakenRow[]>([]);
  const [active, setActive] = useState(0);
  const [discarding, setDiscarding] = useState(false);
  const [draft] = useState((): OpeningDraft => {
    const kept = onDevice.read(DRAFT);
    return isDraft(kept) && kept.rows.length > 0 ? kept : { happenedOn: null, rows: [rowBelow()] };
  });
  // Null until somebody chooses one: the list may be finished on a later day than it was begun.
  const [chosenOn, setChosenOn] = useState(draft.happenedOn);
  const happenedOn = chosenOn ?? today;
  const command = useCommand('stock.receiveOpening', { title: intake.openingTitle });
  const form = useCommandForm({
    command,
    contract: contracts.receiveOpening,
    initial: { rows: draft.rows },
    body: ({ rows }) => openingBody(happenedOn, rows, { today, language }),
    onSaved: (answer, { rows }) => {
      tell(intake.saved(answer.lots.length), answer.entryId);
      setTaken(takenRows(answer, rows));
      begin();
    },
  });
  const { rows } = form.values;
  useEffect(() => {
    const keep = setTimeout(
      () => onDevice.keep(DRAFT, { happenedOn: chosenOn, rows } satisfies OpeningDraft),
      KEPT_AFTER_MS,
    );
    return () => clearTimeout(keep);
  }, [chosenOn, rows]);
  // Cells settle by themselves, several at once and between two strokes of a key.
  const setRows = (change: (rows: Row[]) => Row[]) => form.set((before) => ({ rows: change(before.rows) }));
  const begin = () => {
    setChosenOn(null);
    form.restart({ rows: [rowBelow()] });
    setActive(0);
  };

  const list = useRef<HTMLDivElement>(null);
  const wanted = useRef<number | null>(null);
  // In the same breath as the new row is drawn: a stroke later the next letter would land in the row before.
  useLayoutEffect(() => {
    const cell =
      wanted.current === null
        ? undefined
        : list.current?.querySelectorAll<HTMLInputElement>('[data-cell="plant"] input')[wanted.current];
    if (!cell) return;
    cell.focus();
    wanted.current = null;
  });
  const full = rows.length >= contracts.OPENING_ROWS;
  // A row is drawn anew only when it changes itself: a list of a hundred must not slow a fast typist down.
  const work = useSteady({
    activate: setActive,
    change: (lotId: string, part: Partial<Row>) =>
      setRows((all) => all.map((each) => (each.lotId === lotId ? { ...each, ...part } : each))),
    next: (index: number) => {
      wanted.current = Math.min(index + 1, contracts.OPENING_ROWS - 1);
      setActive(wanted.current);
      const lotId = newId();
      setRows((all) =>
        index === all.length - 1 && all.length < contracts.OPENING_ROWS
          ? [...all, rowBelow(all.at(-1), { today, language }, lotId)]
          : all,
      );
    },
    remove: (lotId: string) => {
      const spare = rowBelow();
      setRows((all) => (all.length === 1 ? [spare] : all.filter((each) => each.lotId !== lotId)));
    },
  });
  const filled = filledRows(rows);
  // Rows on which nothing was typed are not sent; they leave the list first, so that an error names the row in sight.
  const submit = () => {
    const whole = { rows: filled.length > 0 ? filled : rows.slice(0, 1) };
    form.set(whole);
    form.submit(whole);
  };

  return (
    <>
      {taken.length > 0 && <TakenIn rows={taken} />}
      <Form {...form.props} onSubmit={submit} aria-label={intake.list}>
        <DateField label={intake.countedOn} name="happenedOn" value={happenedOn} onChange={setChosenOn} max={today} />
        <div className="opening-list" ref={list}>
          <div className="opening-head" aria-hidden="true">
            <span />
            {[intake.plant, intake.units, intake.container, intake.place, intake.since].map((word) => (
              <span key={word}>{word}</span>
            ))}
          </div>
          {rows.map((row, index) => (
            <OpeningRow key={row.lotId} row={row} index={index} active={index === active} work={work} />
          ))}
        </div>
        <div className="row">
          <Button disabled={full} onClick={() => work.next(rows.length - 1)}>
            {intake.addRow}
          </Button>
          <span role="status">
            {full ? intake.full(contracts.OPENING_ROWS) : intake.rowCount(filled.length, unitsIn(filled))}
          </span>
        </div>
        <Submit
          form={{ ...form, restart: begin }}
          others={
            rows.some((row) => !isBlank(row)) && <Button onClick={() => setDiscarding(true)}>{intake.discard}</Button>
          }
        >
          {intake.save(filled.length)}
        </Submit>
        <p className="opening-kept">{intake.kept}</p>
      </Form>
      <ConfirmAgain
        open={discarding}
        title={intake.discard}
        confirm={intake.discard}
        onConfirm={() => {
          begin();
          setDiscarding(false);
        }}
        onClose={() => setDiscarding(false)}
      >
        {intake.discardText}
      </ConfirmAgain>
    </>
  );
}

function takenRows(answer: CommandAnswer<'stock.receiveOpening'>, rows: readonly Row[]): TakenRow[] {
  const byId = new Map(rows.map((row) => [row.lotId, row]));
  return answer.lots.map(({ lotId, code }) => {
    const row = byId.get(lotId);
    return { lotId, code, plant: row?.plant.text ?? '', units: Number(row?.units ?? 0), place: row?.place.text ?? '' };
  });
}
