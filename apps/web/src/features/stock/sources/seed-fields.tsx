/** The part of a source's form that is about its seed: weights, purity, how it is kept and what it does not suffer. */
import { SEED_KINDS, SEED_STORAGES, type SeedStorage, type SourceKind } from '@rootclock/domain';
import { useSession } from '../../../lib/api/index.ts';
import { useMessages } from '../../../messages/index.ts';
import { CheckboxField, DateField, NumberField, SelectField } from '../../../ui/fields/index.ts';
import { FieldGroup } from '../../../ui/form/index.ts';
import type { SourceStory } from './source-story.ts';

/** As it is typed: the purity in per cent. */
export interface SeedDraft {
  rawGrams: number | null;
  cleanedGrams: number | null;
  purity: number | null;
  seedsPerGram: number | null;
  sowFresh: boolean;
  neverDry: boolean;
  storage: SeedStorage | '';
  storedOn: string;
}

export const NO_SEED: SeedDraft = {
  rawGrams: null,
  cleanedGrams: null,
  purity: null,
  seedsPerGram: null,
  sowFresh: false,
  neverDry: false,
  storage: '',
  storedOn: '',
};

export const holdsSeed = (kind: SourceKind | ''): boolean => SEED_KINDS.some((each) => each === kind);

/** Per cent as they are typed; the fourth decimal is where typing them would show rounding. */
export const purityTyped = (purity: number): number => Math.round(purity * 1e6) / 1e4;

export const seedDraftOf = ({
  rawGrams,
  cleanedGrams,
  purity,
  seedsPerGram,
  sowFresh,
  neverDry,
  storage,
  storedOn,
}: SourceStory): SeedDraft => ({
  rawGrams,
  cleanedGrams,
  seedsPerGram,
  sowFresh,
  neverDry,
  purity: purity === null ? null : purityTyped(purity),
  storage: storage ?? '',
  storedOn: storedOn ?? '',
});

/** What is sent of it; of what holds no seed nothing is. */
export const seedBodyOf = (
  kind: SourceKind | '',
  { rawGrams, cleanedGrams, purity, seedsPerGram, sowFresh, neverDry, storage, storedOn }: SeedDraft,
) =>
  holdsSeed(kind)
    ? {
        rawGrams,
        cleanedGrams,
        seedsPerGram,
        sowFresh,
        neverDry,
        purity: purity === null ? null : purity / 100,
        storage: storage || null,
        storedOn: storedOn || null,
      }
    : {};

/** Each field as its form binds it. */
type Bound = {
  [Key in keyof SeedDraft]: { name: string; value: SeedDraft[Key]; onChange: (value: SeedDraft[Key]) => void };
};

export function SeedFields({ kind, isNew, fields }: { kind: SourceKind | ''; isNew: boolean; fields: Bound }) {
  const { seed } = useMessages();
  const { today } = useSession();
  if (!holdsSeed(kind)) return null;
  const isBought = kind === 'bought-seed';
  return (
    <FieldGroup legend={seed.fieldsTitle}>
      {!isBought && (
        <NumberField label={seed.raw} hint={seed.rawHint} unit={seed.gramsUnit} decimal optional {...fields.rawGrams} />
      )}
      <NumberField
        label={isBought ? seed.bought : seed.cleaned}
        hint={isNew ? seed.cleanedNewHint : seed.cleanedHint}
        unit={seed.gramsUnit}
        decimal
        optional
        {...fields.cleanedGrams}
      />
      <NumberField label={seed.purity} hint={seed.purityHint} unit="%" decimal optional {...fields.purity} />
      <NumberField label={seed.seedsPerGram} hint={seed.seedsPerGramHint} decimal optional {...fields.seedsPerGram} />
      <SelectField
        label={seed.storage}
        optional
        empty={seed.storageNone}
        {...fields.storage}
        choices={SEED_STORAGES.map((value) => ({ value, label: seed.storages[value] }))}
      />
      <DateField label={seed.storedOn} optional max={today} {...fields.storedOn} />
      <CheckboxField label={seed.sowFresh} {...fields.sowFresh} />
      <CheckboxField label={seed.neverDry} {...fields.neverDry} />
    </FieldGroup>
  );
}
