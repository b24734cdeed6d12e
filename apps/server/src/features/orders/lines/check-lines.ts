import type { orders } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { loadBeds } from '../../clients/store.ts';
import { loadContainers } from '../../stock/lots/store.ts';
import { loadKit } from '../kits/store.ts';
import { type AskedRegion, requireNatives } from '../orders/natives.ts';
import { type LineRow, loadPlantNames } from './store.ts';
import { requireWholeTrays } from './whole-trays.ts';

type LineInput = z.output<typeof orders.orderLine>;

/** Lines as they are stored. Everything they name is looked up first, so that a wrong id is said beside its field. */
export async function checkLines(
  context: ReadContext,
  order: AskedRegion & { siteId: string | null },
  lines: readonly LineInput[],
  path: (at: number) => string,
): Promise<LineRow[]> {
  await loadPlantNames(context, [...new Set(lines.map(({ plantId }) => plantId))], `${path(0)}plantId`);
  const containers = await loadContainers(
    context,
    lines.map(({ containerId }) => containerId),
    `${path(0)}containerId`,
  );
  for (const [at, { units }] of lines.entries())
    requireWholeTrays(units, containers[at]?.cells ?? null, `${path(at)}units`);
  await checkAlternatives(
    context,
    lines.map((line, at) => ({ ...line, cells: containers[at]?.cells ?? null, path: path(at) })),
  );
  await checkKits(context, lines, path);
  await checkBeds(context, order, lines, path);
  await requireNatives(
    context,
    order,
    lines.flatMap((line, at) => [
      { plantId: line.plantId, field: `${path(at)}plantId` },
      ...alternativesNamed(line.alternatives, path(at)),
    ]),
  );
  return lines.map((line) => ({ ...line, seedZone: line.seedZone ?? null }));
}

/** A line that comes with kits asks for what these take of it, and for nothing else. */
async function checkKits(
  context: ReadContext,
  lines: readonly LineInput[],
  path: (at: number) => string,
): Promise<void> {
  for (const [at, { kit: asked, plantId, containerId, units }] of lines.entries()) {
    if (asked === null) continue;
    const kit = await loadKit(context, asked.kitId, `${path(at)}kit.kitId`);
    const each =
      kit.components.find((component) => component.plantId === plantId && component.containerId === containerId)
        ?.units ?? null;
    const takes = each === null ? null : each * asked.units;
    if (takes !== units) refuse('not-of-kit', { kit: kit.name, units: takes }, `${path(at)}units`);
  }
}

export async function checkBeds(
  context: ReadContext,
  order: { siteId: string | null },
  lines: readonly { bedId: string | null }[],
  path: (at: number) => string,
): Promise<void> {
  const beds = await loadBeds(
    context,
    lines.flatMap(({ bedId }) => bedId ?? []),
  );
  for (const [at, line] of lines.entries()) {
    const bed = line.bedId === null ? undefined : beds.get(line.bedId);
    if (bed && bed.siteId !== order.siteId) refuse('bed-of-other-site', { bed: bed.name }, `${path(at)}bedId`);
  }
}

/** The plants of alternatives with the fields that name them. */
export const alternativesNamed = (alternatives: readonly Item[], prefix: string) =>
  alternatives.map(({ plantId }, at) => ({ plantId, field: `${prefix}alternatives.${at}.plantId` }));

interface Item {
  plantId: string;
  containerId: string;
}

interface Asked extends Item {
  cells: number | null;
  alternatives: readonly Item[];
  /** Stands before the names of its fields. */
  path: string;
}

/**
 * Every alternative exists, and none is named twice or is what was asked for anyway. All are counted as the item asked for is: a line takes
 * either trays of so many cells or plants by the piece, else half a tray could be left to be filled with pots. What all lines name is looked up at
 * once, since a large order names thousands.
 */
export async function checkAlternatives(context: ReadContext, lines: readonly Asked[]): Promise<void> {
  const named = lines.flatMap(({ alternatives }) => [...alternatives]);
  if (named.length === 0) return;
  const field = `${lines.find(({ alternatives }) => alternatives.length > 0)?.path ?? ''}alternatives`;
  const names = await loadPlantNames(context, [...new Set(named.map(({ plantId }) => plantId))], field);
  const containers = new Map(
    (await loadContainers(context, [...new Set(named.map(({ containerId }) => containerId))], field)).map((row) => [
      row.id,
      row,
    ]),
  );
  for (const { plantId: askedPlant, containerId: askedContainer, cells: asked, alternatives, path } of lines) {
    const seen = new Set([`${askedPlant}/${askedContainer}`]);
    for (const [at, { plantId, containerId }] of alternatives.entries()) {
      const { code: container = '', cells = null } = containers.get(containerId) ?? {};
      if (cells !== asked) refuse('other-trays', { container, cells, asked }, `${path}alternatives.${at}.containerId`);
      const key = `${plantId}/${containerId}`;
      if (seen.has(key)) refuse('alternative-twice', { plant: names.get(plantId) ?? '' }, `${path}alternatives`);
      seen.add(key);
    }
  }
}
