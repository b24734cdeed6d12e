/** Bought plants: a delivery with its lines, booked as one entry and held in quarantine unless somebody says otherwise. */
import { stock as contracts } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { useState } from 'react';
import { useSession } from '../../../../lib/api/index.ts';
import { Submit, useCommandForm } from '../../../../lib/form/index.ts';
import { useCommand } from '../../../../lib/outbox/index.ts';
import { paths } from '../../../../lib/paths.ts';
import { isText, useRemembered } from '../../../../lib/remember.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { CheckboxField, DateField, TextField } from '../../../../ui/fields/index.ts';
import { FieldGroup, Form } from '../../../../ui/form/index.ts';
import { PageHeader } from '../../../../ui/layout/index.ts';
import { useUndoable } from '../../lots/undo.ts';
import { StockTabs } from '../../stock-tabs.tsx';
import { IntakeTabs, NotYours } from '../intake-tabs.tsx';
import { TakenIn, type TakenRow } from '../taken-in.tsx';
import { type BoughtDraft, type BoughtLine as Line, boughtBody, differenceOf, lineBelow } from './bought-draft.ts';
import { BoughtLine } from './bought-line.tsx';
import './bought.css';

export function BoughtPage() {
  const { intake } = useMessages().stockIn;
  const { mayBe } = useSession();
  return (
    <>
      <StockTabs takeIn={paths.receive()} />
      <PageHeader title={intake.boughtTitle} facts={intake.boughtText} />
      <IntakeTabs />
      {mayBe(FIELD) ? <Delivery /> : <NotYours />}
    </>
  );
}

function Delivery() {
  const { intake } = useMessages().stockIn;
  const { today } = useSession();
  const tell = useUndoable();
  const [lastVendor, keepVendor] = useRemembered('bought.vendor', '', isText);
  const [taken, setTaken] = useState<TakenRow[]>([]);
  const form = useCommandForm({
    command: useCommand('stock.receiveBought', { title: intake.boughtTitle }),
    contract: contracts.receiveBought,
    initial: {
      happenedOn: today,
      vendor: lastVendor,
      pesticideStatement: '',
      quarantine: true,
      lines: [lineBelow()],
    } as BoughtDraft,
    body: boughtBody,
    onSaved: ({ entryId, lots }, { vendor, lines }) => {
      tell(intake.savedBought(lots.length, differenceOf(lots)), entryId);
      keepVendor(vendor);
      const byId = new Map(lines.map((line) => [line.lotId, line]));
      setTaken(
        lots.map(({ lotId, code }) => {
          const line = byId.get(lotId);
          return {
            lotId,
            code,
            plant: line?.plant?.scientificName ?? '',
            units: line?.receivedUnits ?? 0,
            place: line?.place?.code ?? '',
          };
        }),
      );
      form.restart({ vendor, lines: [lineBelow(lines.at(-1))] });
      window.scrollTo({ top: 0 });
    },
  });
  const { lines } = form.values;
  const setLines = (next: Line[]) => form.set({ lines: next });
  const begin = () => form.restart({ vendor: form.values.vendor, lines: [lineBelow(lines.at(-1))] });
  return (
    <>
      {taken.length > 0 && <TakenIn rows={taken} />}
      <Form {...form.props}>
        <FieldGroup legend={intake.delivery}>
          <DateField label={intake.arrivedOn} {...form.field('happenedOn')} max={today} />
          <TextField label={intake.vendor} optional {...form.field('vendor')} />
          <TextField
            label={intake.pesticideStatement}
            hint={intake.pesticideHint}
            optional
            {...form.field('pesticideStatement')}
          />
          <CheckboxField label={intake.quarantine} hint={intake.quarantineHint} {...form.field('quarantine')} />
        </FieldGroup>
        <FieldGroup legend={intake.lines}>
          {lines.map((line, index) => (
            <BoughtLine
              key={line.lotId}
              line={line}
              index={index}
              onChange={(part) =>
                setLines(lines.map((each) => (each.lotId === line.lotId ? { ...each, ...part } : each)))
              }
              onRemove={
                lines.length > 1 ? () => setLines(lines.filter((each) => each.lotId !== line.lotId)) : undefined
              }
            />
          ))}
        </FieldGroup>
        <div className="row">
          <Button
            disabled={lines.length >= contracts.BOUGHT_LINES}
            onClick={() => setLines([...lines, lineBelow(lines.at(-1))])}
          >
            {intake.addLine}
          </Button>
        </div>
        <Submit form={{ ...form, restart: begin }}>{intake.saveBought}</Submit>
      </Form>
    </>
  );
}
