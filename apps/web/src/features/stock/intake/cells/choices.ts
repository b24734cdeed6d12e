/** Which containers or places a few typed letters mean: by code, by name or by measure. Pure, so that tests type without a screen. */
import type { Option } from '../../../../ui/fields/index.ts';

export interface Choices {
  options: Option[];
  /** The one that the text can only mean: its whole code or name, or the only one that fits. */
  settledId: string | null;
}

interface Told {
  id: string;
  code: string;
  name: string;
  detail: string;
}

function choose(all: readonly Told[], text: string, label: (one: Told) => string): Choices {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const fitting = all.filter((one) =>
    words.every((word) => `${one.code} ${one.name} ${one.detail}`.toLowerCase().includes(word)),
  );
  const typed = text.trim().toLowerCase();
  const whole = fitting.filter(
    (one) => one.code.toLowerCase() === typed || one.name.toLowerCase() === typed || label(one).toLowerCase() === typed,
  );
  const only = whole.length === 1 ? whole[0] : fitting.length === 1 ? fitting[0] : undefined;
  return {
    // What was written whole comes first; the rest keep their order.
    options: [...whole, ...fitting.filter((one) => !whole.includes(one))].map((one) => ({
      id: one.id,
      label: label(one),
      detail: one.detail,
    })),
    settledId: typed === '' ? null : (only?.id ?? null),
  };
}

export interface ContainerTold {
  id: string;
  code: string;
  name: string;
  volumeMl: number | null;
  depthMm: number | null;
  cells: number | null;
}

export const containerChoices = (
  containers: readonly ContainerTold[],
  text: string,
  describe: (container: ContainerTold) => string,
): Choices =>
  choose(
    containers.map((container) => ({
      id: container.id,
      code: container.code,
      name: container.name,
      detail: [describe(container), container.code].filter(Boolean).join(' · '),
    })),
    text,
    (one) => one.name,
  );

export interface PlaceTold<Kind extends string> {
  placeId: string;
  code: string;
  name: string;
  kind: Kind;
}

export const placeChoices = <Kind extends string>(
  places: readonly PlaceTold<Kind>[],
  text: string,
  kinds: Record<Kind, string>,
): Choices =>
  choose(
    places.map(({ placeId, code, name, kind }) => ({
      id: placeId,
      code,
      name,
      detail: name === code ? kinds[kind] : `${name} · ${kinds[kind]}`,
    })),
    text,
    (one) => one.code,
  );
