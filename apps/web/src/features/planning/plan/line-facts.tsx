/** What a planned batch takes: source and seed, medium, bench space, and what its pot life then is. */
import { useFormat } from '../../../lib/format/index.ts';
import { paths } from '../../../lib/paths.ts';
import { useMessages } from '../../../messages/index.ts';
import { TextLink } from '../../../ui/action/index.ts';
import { DefinitionList } from '../../../ui/layout/index.ts';
import type { PlanRow } from './plan-words.ts';

const CM2_IN_M2 = 10_000;
const ML_IN_LITRE = 1000;

export function LineFacts({ row }: { row: PlanRow }) {
  const { plan: say } = useMessages().planning;
  const { dates, measures } = useFormat();
  const window = row.window && say.windowFrom(dates.short(row.window.opensOn), dates.short(row.window.closesOn));
  const limit = row.potLife.plantByOn === null ? say.potLifeNone : say.potLifeUntil(dates.long(row.potLife.plantByOn));
  const bench =
    row.benchCm2 === 0 || !row.benchFromOn || !row.benchUntilOn
      ? say.noBench
      : say.benchOf(
          measures.area(row.benchCm2 / CM2_IN_M2),
          dates.short(row.benchFromOn),
          dates.short(row.benchUntilOn),
        );
  return (
    <DefinitionList
      facts={[
        {
          term: say.source,
          value: (
            <>
              <TextLink to={paths.source(row.sourceId)}>{row.sourceCode}</TextLink>
              {row.sourceWords && ` ${row.sourceWords}`}
            </>
          ),
        },
        row.seeds !== null && { term: say.seed, value: <SeedWords row={row} seeds={row.seeds} /> },
        row.sownIntoName !== null &&
          row.sownIntoName !== row.containerName && {
            term: say.target,
            value: `${row.sownIntoName} → ${row.containerName}`,
          },
        { term: say.gets, value: say.getsOf(row.cautiousPlants, row.usualPlants) },
        { term: say.window, value: window },
        row.mediumLitres > 0 && { term: say.medium, value: measures.volume(row.mediumLitres * ML_IN_LITRE) },
        { term: say.bench, value: bench },
        { term: say.potLife, value: limit },
      ]}
    />
  );
}

function SeedWords({ row, seeds }: { row: PlanRow; seeds: number }) {
  const { plan: say } = useMessages().planning;
  const { measures } = useFormat();
  const each = row.seedsPerCell !== null && row.seedsPerCell > 1 ? `, ${say.seedsEach(row.seedsPerCell)}` : '';
  if (row.grams === null)
    return (
      <>
        {say.seedUnknown(seeds)}
        {each}
      </>
    );
  const taken = measures.seedWeight(row.grams);
  return (
    <>
      {row.gramsLeft === null ? say.seedUnweighed(taken) : say.seedOf(taken, measures.seedWeight(row.gramsLeft))}
      {each}
    </>
  );
}
