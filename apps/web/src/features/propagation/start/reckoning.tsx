/** Reckoning: from the plants wanted back to what has to be started, what it takes, and how long its pots last. */
import { useState } from 'react';
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button } from '../../../ui/action/index.ts';
import { NumberField } from '../../../ui/fields/index.ts';
import { DefinitionList } from '../../../ui/layout/index.ts';
import { SharesTable } from '../yields/shares-table.tsx';
import type { ForecastSuggestion, StartProtocol } from '../yields/suggestion.ts';
import { reckonStart, type StartReckoned } from './reckon-start.ts';
import type { StartValues } from './start-values.ts';
import './start.css';

export interface ReckoningProps {
  values: StartValues;
  protocol: StartProtocol;
  suggestion: ForecastSuggestion;
  set: (part: Partial<StartValues>) => void;
}

const PERCENT = 100;

export function Reckoning({ values, protocol, suggestion, set }: ReckoningProps) {
  const { propagation } = useMessages();
  const { starting: say } = propagation;
  const { numbers } = useFormat();
  const [wanted, setWanted] = useState<number | null>(null);
  const [percent, setPercent] = useState<number | null>(Math.round(suggestion.confidence * PERCENT * 10) / 10);
  const [taken, setTaken] = useState(false);
  const confidence = percent === null ? null : percent / PERCENT;
  const seedsPerCell = values.unit === 'cell' ? protocol.seedsPerCell : null;
  const reckoned = reckonStart({
    wanted,
    confidence,
    unit: values.unit,
    ahead: suggestion.stages,
    seedsPerCell,
    cellsPerTray: values.containerId?.cells ?? null,
    cellMl: values.containerId?.volumeMl ?? null,
    potMl: values.targetContainerId?.volumeMl ?? null,
  });
  const take = ({ units, counts, trays, inTrays, seeds }: StartReckoned) => {
    set({
      ...(counts === 'seeds'
        ? {}
        : trays !== null && inTrays !== null
          ? { inTrays: true, trays }
          : { inTrays: false, units }),
      ...(seeds === null ? {} : { seedsSown: seeds }),
      fromRecord: true,
    });
    setTaken(true);
  };
  const type = (change: () => void) => {
    change();
    setTaken(false);
  };
  return (
    <details className="start-more">
      <summary>{say.reckon}</summary>
      <div className="start-pair">
        <NumberField
          name="reckon.wanted"
          label={say.wanted}
          value={wanted}
          onChange={(value) => type(() => setWanted(value))}
          optional="unsaid"
        />
        <NumberField
          name="reckon.sure"
          label={say.sure}
          unit="%"
          decimal
          value={percent}
          onChange={(value) => type(() => setPercent(value))}
          optional="unsaid"
        />
      </div>
      <div role="status" className="start-reckoned">
        {reckoned === 'incomplete' ? (
          <p>{say.incomplete}</p>
        ) : reckoned === 'never' ? (
          <p>{say.never(numbers.share(confidence ?? 0))}</p>
        ) : (
          <Reckoned reckoned={reckoned} values={values} seedsPerCell={seedsPerCell} suggestion={suggestion} />
        )}
        {taken && <p>{say.taken}</p>}
      </div>
      {typeof reckoned === 'object' && (
        <div className="row">
          <Button onClick={() => take(reckoned)}>{say.take}</Button>
        </div>
      )}
    </details>
  );
}

function Reckoned({
  reckoned,
  values,
  seedsPerCell,
  suggestion,
}: {
  reckoned: StartReckoned;
  values: StartValues;
  seedsPerCell: number | null;
  suggestion: ForecastSuggestion;
}) {
  const { propagation } = useMessages();
  const { starting: say, yields } = propagation;
  const { dates, measures, numbers } = useFormat();
  const count = numbers.count(reckoned.units);
  const litres = (volume: number | null) => (volume === null ? null : measures.volume(volume * 1000));
  const { potLife, readyOn, readyLateOn } = suggestion;
  const medium = say.mediumOf(litres(reckoned.cellLitres), litres(reckoned.potLitres));
  return (
    <>
      <DefinitionList
        facts={[
          {
            term: say.needs,
            value: [
              reckoned.counts === 'seeds' ? say.needsSeeds(count) : say.needsUnits(count, values.unit),
              reckoned.trays !== null && reckoned.inTrays !== null
                ? say.needsTrays(reckoned.trays, numbers.count(reckoned.inTrays))
                : null,
            ]
              .filter(Boolean)
              .join(': '),
          },
          reckoned.seeds !== null &&
            seedsPerCell !== null && {
              term: say.seeds,
              value: say.seedsOf(numbers.count(reckoned.seeds), seedsPerCell),
            },
          medium !== '' && { term: say.medium, value: `${medium}. ${say.mediumHint}` },
          readyOn !== null &&
            readyLateOn !== null && {
              term: say.ready,
              value: yields.suggestedReady(dates.short(readyOn), dates.short(readyLateOn)).replace(/^\S+ /, ''),
            },
          potLife !== null && {
            term: say.potLife,
            value: potLife.plantByOn === null ? say.potLifeNone : say.potLifeUntil(dates.long(potLife.plantByOn)),
          },
        ]}
      />
      <p>{say.restsOn(suggestion.batches)}</p>
      <SharesTable stages={suggestion.stages} />
    </>
  );
}
