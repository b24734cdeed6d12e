/** The three cells that name something: plant, container and place, each settled by the fewest letters that mean one thing. */
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { plants as contracts } from '@rootclock/contracts';
import { trpc } from '../../../../lib/api/index.ts';
import { useRested } from '../../../../lib/use-rested.ts';
import { useMessages } from '../../../../messages/index.ts';
import type { Option } from '../../../../ui/fields/index.ts';
import { useContainerWords } from '../../../plants/container-picker.tsx';
import { containerChoices, placeChoices } from './choices.ts';
import { PickCell, type Picked } from './pick-cell.tsx';

export interface Cell {
  value: Picked | null;
  text: string;
}

interface CellProps {
  name: string;
  label: string;
  cell: Cell;
  onCell: (cell: Cell) => void;
}

const PAUSE_MS = 120;

export function PlantCell({ name, label, cell, onCell }: CellProps) {
  const { intake } = useMessages().stockIn;
  const { picker } = useMessages().plants;
  const text = cell.value ? '' : cell.text.trim();
  const asked = useRested(text, PAUSE_MS);
  const query = useQuery({
    ...trpc.plants.findPlant.queryOptions({ text: asked }),
    enabled: asked !== '',
    placeholderData: keepPreviousData,
  });
  const answered = text !== '' && asked === text && query.data !== undefined && !query.isPlaceholderData;
  const offers = text === '' ? [] : offersOf(query.data, picker);
  const settled = answered ? settledPlant(text, query.data) : null;
  const problem = !answered
    ? null
    : query.data.match.kind === 'ambiguous'
      ? intake.ambiguous(text, query.data.match.plants.length)
      : offers.length > 0
        ? intake.several(text)
        : intake.noPlant(text);
  return (
    <PickCell
      name={name}
      label={label}
      {...cell}
      scientific
      onText={(typed) => onCell({ value: null, text: typed })}
      onPick={(id) => {
        const option = offers.find((each) => each.id === id);
        if (option) onCell({ value: { id, label: option.label }, text: option.label });
      }}
      options={offers}
      settledId={settled}
      problem={problem}
      loading={text !== '' && !answered}
    />
  );
}

function offersOf(
  found: contracts.FoundPlant | undefined,
  say: { calledHere: (name: string, code: string) => string; nearMiss: (name: string) => string },
): Option[] {
  if (!found) return [];
  const { match, suggestions } = found;
  const option = (plant: contracts.PlantChoice, detail: string): Option => ({
    id: plant.id,
    label: plant.scientificName,
    detail,
    scientific: true,
  });
  const meant = match.kind === 'ambiguous' ? match.plants : match.kind === 'unknown' ? [] : [match.plant];
  const all = [
    ...meant.map((plant) => option(plant, say.calledHere(plant.vernacularName, plant.code))),
    ...suggestions.map(({ plant, name, kind }) =>
      option(plant, say.calledHere(kind === 'scientific' ? plant.vernacularName : name, plant.code)),
    ),
    ...(match.kind === 'unknown' ? match.nearMisses.map(({ plant, name }) => option(plant, say.nearMiss(name))) : []),
  ];
  return all.filter((each, index) => all.findIndex((other) => other.id === each.id) === index);
}

/** A whole name of one plant, its code, or letters with which only one plant begins. Of several nothing is guessed. */
function settledPlant(text: string, { match, suggestions }: contracts.FoundPlant): string | null {
  if (match.kind === 'ambiguous') return null;
  if (match.kind !== 'unknown') return match.plant.id;
  const coded = suggestions.find(({ plant }) => plant.code === text.toUpperCase());
  return (coded ?? (suggestions.length === 1 ? suggestions[0] : undefined))?.plant.id ?? null;
}

export function ContainerCell({
  name,
  label,
  cell,
  onCell,
  onKind,
}: CellProps & { onKind: (kind: contracts.ContainerRow['kind']) => void }) {
  const query = useQuery(trpc.plants.listContainers.queryOptions({}));
  const describe = useContainerWords();
  const rows = query.data ?? [];
  return (
    <KnownCell
      name={name}
      label={label}
      cell={cell}
      onCell={(next) => {
        onCell(next);
        const kind = rows.find((row) => row.id === next.value?.id)?.kind;
        if (kind) onKind(kind);
      }}
      choices={containerChoices(rows, cell.value ? '' : cell.text, describe)}
      loading={query.isLoading}
    />
  );
}

export function PlaceCell({ name, label, cell, onCell }: CellProps) {
  const { placeKinds } = useMessages().stockIn;
  const query = useQuery(trpc.stock.listPlaces.queryOptions({}));
  return (
    <KnownCell
      name={name}
      label={label}
      cell={cell}
      onCell={onCell}
      choices={placeChoices(query.data ?? [], cell.value ? '' : cell.text, placeKinds)}
      loading={query.isLoading}
    />
  );
}

function KnownCell({
  cell,
  onCell,
  choices,
  ...props
}: CellProps & { choices: { options: Option[]; settledId: string | null }; loading: boolean }) {
  const { intake } = useMessages().stockIn;
  const text = cell.text.trim();
  return (
    <PickCell
      {...props}
      {...cell}
      onText={(typed) => onCell({ value: null, text: typed })}
      onPick={(id) => {
        const option = choices.options.find((each) => each.id === id);
        if (option) onCell({ value: { id, label: option.label }, text: option.label });
      }}
      options={choices.options}
      settledId={text === '' ? null : choices.settledId}
      problem={choices.options.length > 0 ? intake.several(text) : intake.noneOf(text)}
    />
  );
}
