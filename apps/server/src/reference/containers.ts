import type { ContainerKind, Standing } from '@rootclock/domain';
import { type Fact, assumed, confirmed } from './fact.ts';

/** One cubic inch, exact. */
export const MILLILITRES_PER_CUBIC_INCH = 16.387064;

/** Cubic inches printed for a trade class, both bounds included. */
export interface TradeClass {
  readonly tradeClass: string;
  readonly lowCubicInches: number;
  readonly highCubicInches: number;
}

/** Trade classes by volume: nursery stock is sold by class and not by measure, so a class says little about one pot. */
export const tradeClasses: Fact<readonly TradeClass[]> = confirmed(
  [
    { tradeClass: '#1', lowCubicInches: 152, highCubicInches: 251 },
    { tradeClass: '#2', lowCubicInches: 320, highCubicInches: 474 },
    { tradeClass: '#3', lowCubicInches: 628, highCubicInches: 742 },
    { tradeClass: '#5', lowCubicInches: 785, highCubicInches: 1242 },
  ],
  'ANSI Z60.1 (2004), second-hand',
);

/** The class a volume in millilitres falls into, or null where it lies between two classes or outside them. */
export function tradeClassOf(volumeMl: number): string | null {
  const cubicInches = volumeMl / MILLILITRES_PER_CUBIC_INCH;
  return (
    tradeClasses.value.find((row) => cubicInches >= row.lowCubicInches && cubicInches <= row.highCubicInches)
      ?.tradeClass ?? null
  );
}

/** What plants stand in. The code is the product's own; no maker's size is meant. */
export interface ReferenceContainer {
  readonly code: string;
  readonly name: string;
  readonly kind: ContainerKind;
  /** Of one cell, pot or flat; null where there is no pot. */
  readonly volumeMl: number | null;
  readonly depthMm: number | null;
  /** Footprint of the whole tray, flat or pot at its widest; a round pot has its diameter twice. */
  readonly widthMm: number | null;
  readonly lengthMm: number | null;
  readonly cells: number | null;
  readonly tradeClass: string | null;
  readonly standing: Standing;
  readonly source: string | null;
  readonly note: string;
}

const GENERIC = 'a generic size; measure your own';
const CLASS_SIZE = 'a usual size within its trade class; measure your own';

interface Size {
  readonly volumeMl: number | null;
  readonly depthMm: number | null;
  readonly widthMm: number | null;
  readonly lengthMm: number | null;
}

function container(
  code: string,
  name: string,
  kind: ContainerKind,
  size: Size,
  cells: number | null,
  note: string,
): ReferenceContainer {
  // Only pots are sold by class: an open flat holds as much as one and is none.
  const tradeClass = size.volumeMl === null || kind !== 'pot' ? null : tradeClassOf(size.volumeMl);
  const { value, standing, source } = assumed(size);
  return { code, name, kind, ...value, cells, tradeClass, standing, source, note };
}

/** The tray and flat of the trade, nominally 11 by 21 inches. */
const TRAY = { widthMm: 279, lengthMm: 543 };
const NO_POT: Size = { volumeMl: null, depthMm: null, widthMm: null, lengthMm: null };

const tray = (cells: number, volumeMl: number, depthMm: number, deep = false): ReferenceContainer =>
  container(
    `plug-${cells}${deep ? '-deep' : ''}`,
    `plug tray, ${cells} ${deep ? 'deep ' : ''}cells`,
    'tray',
    { volumeMl, depthMm, ...TRAY },
    cells,
    GENERIC,
  );

const pot = (
  code: string,
  name: string,
  volumeMl: number,
  depthMm: number,
  widthMm: number,
  note = GENERIC,
): ReferenceContainer => container(code, name, 'pot', { volumeMl, depthMm, widthMm, lengthMm: widthMm }, null, note);

/** Containers of the trade in generic sizes. Every size is assumed until the nursery has measured its own. */
export const referenceContainers: readonly ReferenceContainer[] = [
  container(
    'flat-open',
    'open flat',
    'flat',
    { volumeMl: 8000, depthMm: 60, ...TRAY },
    null,
    'no cells: the confined clock begins at pricking out',
  ),
  tray(288, 7, 32),
  tray(200, 13, 40),
  tray(128, 22, 45),
  tray(72, 45, 55),
  tray(50, 75, 60),
  tray(50, 110, 125, true),
  tray(38, 150, 125, true),
  pot('cone-164', 'deep cone, 164 ml', 164, 210, 38, '10 cubic inches; single, carried in a rack'),
  pot('pot-7cm', 'square pot, 7 cm', 250, 75, 70),
  pot('pot-9cm', 'square pot, 9 cm', 500, 85, 90),
  pot('band-14cm', 'tree band, 14 cm deep', 600, 140, 73),
  pot('band-23cm', 'tree band, 23 cm deep', 1000, 230, 73),
  pot('pot-1l', 'round pot, 1 l', 1000, 115, 130),
  pot('tall-1l', 'tall pot, 1 l', 1000, 180, 90),
  pot('pot-2l', 'round pot, 2 l', 2000, 145, 170),
  pot('class-1', 'class 1 pot', 2800, 170, 165, CLASS_SIZE),
  pot('class-2', 'class 2 pot', 6000, 215, 225, CLASS_SIZE),
  pot('class-3', 'class 3 pot', 11_000, 240, 280, CLASS_SIZE),
  pot('class-5', 'class 5 pot', 14_500, 270, 300, CLASS_SIZE),
  container(
    'bare-root',
    'bundle, bare root',
    'flat',
    NO_POT,
    null,
    'no pot: roots held damp and cool until they are potted or planted',
  ),
  container('ground', 'in the ground', 'ground', NO_POT, null, 'a nursery bed: no pot, so no pot clock runs'),
];
