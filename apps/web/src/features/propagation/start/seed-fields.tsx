/** SeedFields: what a sowing takes: the packs it is drawn from, seeds, and the weight that leaves the store. */
import { useFormat } from '../../../lib/format/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { NumberField, SelectField } from '../../../ui/fields/index.ts';
import { SeedCalculator } from '../../stock/sources/sowing/seed-calculator.tsx';
import type { StartChoices, StartProtocol } from '../yields/suggestion.ts';
import { unitsOf, type StartValues } from './start-values.ts';
import './start.css';

export interface SeedFieldsProps {
  values: StartValues;
  choices: StartChoices | null;
  protocol: StartProtocol | null;
  set: (part: Partial<StartValues>) => void;
  onPacks: (packsId: string) => void;
}

const roundGrams = (grams: number): number => Math.ceil(grams * 1000 - 1e-6) / 1000;

export function SeedFields({ values, choices, protocol, set, onPacks }: SeedFieldsProps) {
  const { propagation } = useMessages();
  const { form, starting: say } = propagation;
  const { measures } = useFormat();
  const packs = (choices?.packs ?? []).filter(({ sourceId }) => sourceId === values.sourceId);
  const seed = choices?.seed.find(({ sourceId }) => sourceId === values.sourceId) ?? null;
  const left = seed?.gramsLeft ?? null;
  const gramsHint = values.packsId
    ? say.gramsHint.packs
    : left === null
      ? say.gramsHint.unknown
      : values.seedGrams !== null && values.seedGrams <= left
        ? say.leftAfter(measures.seedWeight(left - values.seedGrams))
        : say.gramsHint.left(measures.seedWeight(left));
  const tested = seed !== null && seed.testMethod === 'germination' ? seed.germination : null;
  const byProtocol = protocol?.stages.find(({ kind }) => kind === 'emergence')?.share ?? null;
  return (
    <>
      {packs.length > 0 && (
        <SelectField
          name="fromPacks.batchId"
          label={say.packs}
          optional="unsaid"
          empty={say.noPacks}
          hint={say.packsHint}
          value={values.packsId}
          onChange={onPacks}
          choices={packs.map(({ batchId, code, units, placeCodes }) => ({
            value: batchId,
            label: say.packsOf(code, propagation.units(units, 'pack'), placeCodes.join(', ')),
          }))}
        />
      )}
      {values.packsId && (
        <NumberField
          name="fromPacks.units"
          label={say.packsUsed}
          hint={say.packsUsedHint}
          steps
          value={values.packs}
          onChange={(used) => set({ packs: used })}
        />
      )}
      <NumberField
        name="seedsSown"
        label={form.seeds}
        hint={form.seedsHint}
        optional
        value={values.seedsSown}
        onChange={(seedsSown) => set({ seedsSown })}
      />
      {values.sourceId && (
        <NumberField
          name="seedGrams"
          label={say.grams}
          unit="g"
          decimal
          optional
          hint={gramsHint}
          value={values.seedGrams}
          onChange={(seedGrams) => set({ seedGrams })}
        />
      )}
      {seed && (
        <details className="start-more">
          <summary>{say.seedCalculator}</summary>
          {tested === null && byProtocol !== null && <p>{say.protocolFigure}</p>}
          <SeedCalculator
            key={`${seed.sourceId} ${protocol?.versionId ?? ''}`}
            seed={{ ...seed, germination: tested ?? byProtocol, plantSeed: choices?.plantSeed ?? null }}
            {...(values.unit === 'cell' ? { cells: unitsOf(values) } : {})}
            onUse={({ seeds, grams }) =>
              set({ seedsSown: seeds, ...(grams === null ? {} : { seedGrams: roundGrams(grams) }) })
            }
          />
        </details>
      )}
    </>
  );
}
