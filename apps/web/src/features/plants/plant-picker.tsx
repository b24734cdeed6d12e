/**
 * PlantPicker: a plant by any name it goes by. Synonyms and common names find it; a name of several plants is never guessed: all it could
 * mean are listed by scientific name, and a sentence asks which. A misspelt name is offered what comes near.
 */
import { useQuery } from '@tanstack/react-query';
import type { plants as contracts } from '@rootclock/contracts';
import { useState } from 'react';
import { trpc } from '../../lib/api/index.ts';
import { useRested } from '../../lib/use-rested.ts';
import { useMessages } from '../../messages/index.ts';
import { ComboboxField, type FieldProps, type Option } from '../../ui/fields/index.ts';

export type PickedPlant = Pick<contracts.PlantChoice, 'id' | 'scientificName'>;

export interface PlantPickerProps extends Omit<FieldProps, 'label'> {
  label?: string;
  value: PickedPlant | null;
  onChange: (plant: contracts.PlantChoice | null) => void;
}

interface Offer {
  plant: contracts.PlantChoice;
  detail: string;
}

const FIRST_OFFERED = 12;

export function PlantPicker({ label, value, onChange, hint, ...props }: PlantPickerProps) {
  const { picker } = useMessages().plants;
  const [text, setText] = useState('');
  const asked = useRested(text);
  const found = useQuery({ ...trpc.plants.findPlant.queryOptions({ text: asked }), enabled: asked !== '' });
  // Before anything is typed, the plants that stand here in most units are the likeliest.
  const most = useQuery({
    ...trpc.plants.listPlants.queryOptions({ sort: 'units', descending: true, perPage: FIRST_OFFERED }),
    enabled: asked === '',
  });

  const offers =
    asked === ''
      ? (most.data?.rows ?? []).map((plant) => ({ plant, detail: picker.calledHere(plant.vernacularName, plant.code) }))
      : offersOf(asked, found.data, picker);
  const said =
    asked !== '' && asked === text && found.data ? sentence(asked, found.data.match, offers.length, picker) : null;

  return (
    <ComboboxField
      {...props}
      label={label ?? picker.label}
      placeholder={picker.placeholder}
      hint={said ? <span role="status">{said}</span> : hint}
      value={value && asOption({ plant: { ...value, code: '' }, detail: '' })}
      options={offers.map((offer) => ({ ...asOption(offer), meant: offer.plant }))}
      answers={(asked === '' ? most : found).isPending ? null : asked}
      onText={setText}
      onChange={onChange}
    />
  );
}

const asOption = ({ plant, detail }: { plant: PickedPlant & { code: string }; detail: string }): Option => ({
  id: plant.id,
  label: plant.scientificName,
  detail,
  scientific: true,
});

/** Whoever bears the whole name first, then whoever has a name beginning so, or else what comes near. */
function offersOf(text: string, found: contracts.FoundPlant | undefined, say: PickerSentences): Offer[] {
  if (!found) return [];
  const { match, suggestions } = found;
  const meant = match.kind === 'ambiguous' ? match.plants : match.kind === 'unknown' ? [] : [match.plant];
  const offers = [
    ...meant.map((plant) => ({
      plant,
      detail:
        meant.length > 1 ? say.oneOf(text, meant.length, plant.code) : say.calledHere(plant.vernacularName, plant.code),
    })),
    ...suggestions.map(({ plant, name, kind }) => ({
      plant,
      detail: say.calledHere(kind === 'scientific' ? plant.vernacularName : name, plant.code),
    })),
    ...(match.kind === 'unknown'
      ? match.nearMisses.map(({ plant, name }) => ({ plant, detail: say.nearMiss(name) }))
      : []),
  ];
  return offers.filter(({ plant }, index) => offers.findIndex((other) => other.plant.id === plant.id) === index);
}

interface PickerSentences {
  calledHere: (name: string, code: string) => string;
  oneOf: (text: string, count: number, code: string) => string;
  nearMiss: (name: string) => string;
  ambiguous: (text: string, count: number) => string;
  unknown: (text: string) => string;
}

function sentence(text: string, match: contracts.PlantMatch, offered: number, say: PickerSentences): string | null {
  if (match.kind === 'ambiguous') return say.ambiguous(text, match.plants.length);
  return match.kind === 'unknown' && offered === 0 ? say.unknown(text) : null;
}
