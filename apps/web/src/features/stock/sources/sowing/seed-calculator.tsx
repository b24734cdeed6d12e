/**
 * SeedCalculator: for so many cells at a fill target, the seeds to each cell, the weight to take and what the tray will look like.
 * It begins with what is known of the seed; each figure can be typed over. With `onUse` it hands its figures to the form around it, in
 * which case `cells` may come from that form as well. It is no form of its own, so that it can stand inside one.
 */
import type { Standing, ViabilityMethod } from '@rootclock/domain';
import { useState } from 'react';
import { useFormat } from '../../../../lib/format/index.ts';
import { useMessages } from '../../../../messages/index.ts';
import { Button } from '../../../../ui/action/index.ts';
import { NumberField } from '../../../../ui/fields/index.ts';
import { reckonSowing, type SowingReckoned } from './reckon-sowing.ts';
import { TrayLook } from './tray-look.tsx';
import './sowing.css';

/** What is known of the seed; shares 0 to 1. */
export interface KnownSeed {
  /** Expected emergence: of a germination test, never of one that counts live seed. */
  germination: number | null;
  /** The kind of test there was, to say why the emergence is not known. */
  testMethod: ViabilityMethod | null;
  hard: number | null;
  dormant: number | null;
  purity: number | null;
  seedsPerGram: number | null;
  gramsLeft: number | null;
  /** The plant's own figure, for where this seed was not counted. */
  plantSeed: { seedsPerGram: number; standing: Standing } | null;
}

export interface SeedCalculatorProps {
  seed: KnownSeed;
  /** Given where the form around it asks for the cells. */
  cells?: number | null;
  onUse?: (figures: { seedsPerCell: number; seeds: number; grams: number | null }) => void;
}

const percent = (share: number | null): number | null => (share === null ? null : Math.round(share * 1000) / 10);
const shareOf = (typed: number | null): number | null => (typed === null ? null : typed / 100);

export function SeedCalculator({ seed, cells: givenCells, onUse }: SeedCalculatorProps) {
  const { seed: words } = useMessages();
  const say = words.sowing;
  const [ownCells, setOwnCells] = useState<number | null>(72);
  const [target, setTarget] = useState<number | null>(95);
  const [germination, setGermination] = useState(percent(seed.germination));
  const [purity, setPurity] = useState(percent(seed.purity));
  const [perGram, setPerGram] = useState(seed.seedsPerGram ?? seed.plantSeed?.seedsPerGram ?? null);
  const cells = givenCells === undefined ? ownCells : givenCells;
  const fromPlant =
    seed.seedsPerGram === null && seed.plantSeed !== null && perGram === seed.plantSeed.seedsPerGram
      ? seed.plantSeed
      : null;
  const reckoned = reckonSowing({
    ...seed,
    cells,
    targetFill: shareOf(target),
    germination: shareOf(germination),
    purity: shareOf(purity),
    seedsPerGram: perGram,
  });
  return (
    <div className="sowing">
      <div className="sowing-fields">
        {givenCells === undefined && (
          <NumberField
            name="sowing.cells"
            label={say.cells}
            hint={say.cellsHint}
            value={ownCells}
            onChange={setOwnCells}
          />
        )}
        <NumberField name="sowing.target" label={say.target} unit="%" decimal value={target} onChange={setTarget} />
        <NumberField
          name="sowing.germination"
          label={say.germination}
          hint={
            seed.germination !== null
              ? say.germinationHint
              : seed.testMethod === null
                ? say.untested
                : words.emergenceUnknown
          }
          unit="%"
          decimal
          value={germination}
          onChange={setGermination}
        />
        <NumberField
          name="sowing.purity"
          label={say.purity}
          hint={say.purityHint}
          unit="%"
          decimal
          optional
          value={purity}
          onChange={setPurity}
        />
        <NumberField
          name="sowing.seedsPerGram"
          label={say.seedsPerGram}
          hint={fromPlant ? say.fromPlant(fromPlant.standing) : say.seedsPerGramHint}
          decimal
          optional
          value={perGram}
          onChange={setPerGram}
        />
      </div>
      <div role="status">
        {reckoned === 'incomplete' ? (
          <p>{say.enough}</p>
        ) : reckoned === 'never' ? (
          <p>{say.never}</p>
        ) : (
          <Reckoned reckoned={reckoned} seed={seed} />
        )}
      </div>
      {onUse && typeof reckoned === 'object' && <Button onClick={() => onUse(reckoned)}>{say.use}</Button>}
    </div>
  );
}

function Reckoned({
  reckoned: { seedsPerCell, seeds, grams, cellsInStore, outcomes, pureLive },
  seed,
}: {
  reckoned: SowingReckoned;
  seed: KnownSeed;
}) {
  const { sowing: say } = useMessages().seed;
  const { numbers, measures } = useFormat();
  return (
    <div className="sowing">
      <dl className="sowing-figures">
        <div>
          <dt>{say.perCell}</dt>
          <dd className="sowing-figure">{numbers.count(seedsPerCell)}</dd>
        </div>
        <div>
          <dt>{say.seeds}</dt>
          <dd className="sowing-figure">{numbers.count(seeds)}</dd>
        </div>
        <div>
          <dt>{say.grams}</dt>
          <dd className="sowing-figure">{grams === null ? '–' : measures.seedWeight(grams)}</dd>
        </div>
      </dl>
      {grams === null ? (
        <p>{say.gramsUnknown}</p>
      ) : seed.gramsLeft === null ? (
        <p className="sowing-note">{say.notWeighed}</p>
      ) : cellsInStore !== null ? (
        <p>
          <strong>{say.tooMuch(measures.seedWeight(seed.gramsLeft), cellsInStore)}</strong>
        </p>
      ) : (
        <p className="sowing-note">{say.ofLeft(measures.seedWeight(seed.gramsLeft))}</p>
      )}
      <TrayLook outcomes={outcomes} />
      {outcomes.multiple >= 1 && <p className="sowing-note">{say.several}</p>}
      <p className="sowing-note">
        {pureLive === null
          ? say.bulkUnknown
          : say.bulk(numbers.share(pureLive.share), numbers.times(pureLive.bulkOfOne))}
      </p>
    </div>
  );
}
