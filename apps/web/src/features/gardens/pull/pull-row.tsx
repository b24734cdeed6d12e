/** One thing to fetch: how many of which lot, with how to handle it. */
import type { gardens as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { Button, TextLink } from '../../../ui/action/index.ts';
import { Badge } from '../../../ui/feedback/index.ts';
import { NumberField } from '../../../ui/fields/index.ts';
import { FlagBadges } from '../../promises/marks/line-flags.tsx';
import { Taxon } from '../../plants/taxon.tsx';
import { AskRootBall } from './ask-root-ball.tsx';
import { usePull, type Pulling } from './use-pull.ts';

export interface PullRowProps {
  pulling: Pulling;
  row: contracts.PullRow;
  mayPull: boolean;
}

export function PullRow({ pulling, row, mayPull }: PullRowProps) {
  const { gardens, plants: plantWords, ui } = useMessages();
  const words = gardens.pull;
  const [units, setUnits] = useState<number | null>(row.units);
  const one = usePull(pulling);
  const care = pulling.list.plants.find(({ plantId }) => plantId === row.plantId);
  const isHeld = row.holds.length > 0;
  const readable = units !== null && Number.isInteger(units) && units > 0 ? units : null;
  return (
    <li className="pull-row">
      <span className="pull-box only-on-paper" aria-hidden="true" />
      <div className="pull-what">
        <p className="pull-head">
          <span className="pull-units">{row.units}</span>
          <TextLink to={paths.lot(row.lotId)}>{row.lotCode}</TextLink>
        </p>
        <p className="pull-plant">
          <Taxon name={row.scientificName} />
          {row.vernacularName && ` (${row.vernacularName})`}, {row.containerCode}
          {row.bedName && `, ${words.forBed(row.bedName)}`}
        </p>
        <p className="row">
          {row.rootChecked ? (
            <Badge shape="full">{words.checked}</Badge>
          ) : (
            <Badge shape="half">{words.notChecked}</Badge>
          )}
          <FlagBadges flags={row.flags} />
          {isHeld && <Badge shape="over">{words.held}</Badge>}
        </p>
        {care && care.handling.length > 0 && (
          <ul className="plain-list pull-handling">
            {care.handling.map((rule) => (
              <li key={rule}>{plantWords.handling[rule]}</li>
            ))}
          </ul>
        )}
        {care && care.cautions.length > 0 && <p className="pull-caution">{words.seeCautions}</p>}
        <AskRootBall pull={one} />
        {one.isKept && <p role="status">{ui.kept}</p>}
      </div>
      {mayPull && !isHeld && (
        <div className="pull-act not-on-paper">
          <NumberField
            name={`${row.lineId}/${row.lotId}`}
            label={words.unitsToPull(row.lotCode)}
            error={one.refusal}
            optional="unsaid"
            steps
            min={1}
            value={units}
            onChange={setUnits}
          />
          <Button
            look="primary"
            wide
            busy={one.busy}
            disabled={readable === null}
            aria-label={words.pullRow(readable ?? 0, row.lotCode)}
            onClick={() => readable !== null && one.pull([{ row, units: readable }])}
          >
            {words.pullUnits(readable ?? 0)}
          </Button>
        </div>
      )}
    </li>
  );
}
