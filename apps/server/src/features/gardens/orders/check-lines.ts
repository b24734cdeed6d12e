import type { gardens } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import { refuse } from '../../../refusal.ts';
import type { ReadContext } from '../../../trpc/operation.ts';
import { requireWholeTrays } from '../../promises/planning/whole-trays.ts';
import { loadContainers } from '../../stock/lots/store.ts';
import { loadKit } from '../kits/store.ts';
import { loadBeds } from '../sites/store.ts';
import { type AskedRegion, requireNatives } from './natives.ts';
import { type LineRow, loadPlantNames } from './store.ts';

type LineInput = z.output<typeof gardens.orderLine>;

/** Lines as they are stored. Everything they name is looked up first, so that a wrong id is said beside its field. */
export async function checkLines(context: ReadContext, order: AskedRegion & { siteId: string | null }, lines: readonly LineInput[], path: (at: number) => string): Promise<LineRow[]> {
  await loadPlantNames(context, [...new Set(lines.map(({ plantId }) => plantId))], `${path(0)}plantId`);
  const containers = await loadContainers(context, lines.map(({ containerId }) => containerId), `${path(0)}containerId`);
  for (const [at, { units }] of lines.entries()) requireWholeTrays(units, containers[at]?.cells ?? null, `${path(at)}units`);
  for (const [at, line] of lines.entries()) await checkAlternatives(context, { ...line, cells: containers[at]?.cells ?? null }, line.alternatives, path(at));
  await checkKits(context, lines, path);
  await checkBeds(context, order, lines, path);
  await requireNatives(context, order, lines.flatMap((line, at) => [{ plantId: line.plantId, field: `${path(at)}plantId` }, ...alternativesNamed(line.alternatives, path(at))]));
  return lines.map((line) => ({ ...line, seedZone: line.seedZone ?? null }));
}

/** A line that comes with kits asks for what these take of it, and for nothing else. */
async function checkKits(context: ReadContext, lines: readonly LineInput[], path: (at: number) => string): Promise<void> {
  for (const [at, { kit: asked, plantId, containerId, units }] of lines.entries()) {
    if (asked === null) continue;
    const kit = await loadKit(context, asked.kitId, `${path(at)}kit.kitId`);
    const each = kit.components.find((component) => component.plantId === plantId && component.containerId === containerId)?.units ?? null;
    const takes = each === null ? null : each * asked.units;
    if (takes !== units) refuse('not-of-kit', { kit: kit.name, units: takes }, `${path(at)}units`);
  }
}

export async function checkBeds(context: ReadContext, order: { siteId: string | null }, lines: readonly { bedId: string | null }[], path: (at: number) => string): Promise<void> {
  const beds = await loadBeds(context, lines.flatMap(({ bedId }) => bedId ?? []));
  for (const [at, line] of lines.entries()) {
    const bed = line.bedId === null ? undefined : beds.get(line.bedId);
    if (bed && bed.siteId !== order.siteId) refuse('bed-of-other-site', { bed: bed.name }, `${path(at)}bedId`);
  }
}

/** The plants of alternatives with the fields that name them. */
export const alternativesNamed = (alternatives: readonly Item[], prefix: string) => alternatives.map(({ plantId }, at) => ({ plantId, field: `${prefix}alternatives.${at}.plantId` }));

interface Item {
  plantId: string;
  containerId: string;
}

/**
 * Every alternative exists, and none is named twice or is what was asked for anyway. All are counted as the item asked for is: a line takes
 * either trays of so many cells or plants by the piece, else half a tray could be left to be filled with pots.
 */
export async function checkAlternatives(context: ReadContext, asked: Item & { cells: number | null }, alternatives: readonly Item[], prefix: string): Promise<void> {
  if (alternatives.length === 0) return;
  const names = await loadPlantNames(context, [...new Set(alternatives.map(({ plantId }) => plantId))], `${prefix}alternatives`);
  const containers = await loadContainers(context, alternatives.map(({ containerId }) => containerId), `${prefix}alternatives`);
  for (const [at, { code: container, cells }] of containers.entries()) {
    if (cells !== asked.cells) refuse('other-trays', { container, cells, asked: asked.cells }, `${prefix}alternatives.${at}.containerId`);
  }
  const seen = new Set([`${asked.plantId}/${asked.containerId}`]);
  for (const { plantId, containerId } of alternatives) {
    const key = `${plantId}/${containerId}`;
    if (seen.has(key)) refuse('alternative-twice', { plant: names.get(plantId) ?? '' }, `${prefix}alternatives`);
    seen.add(key);
  }
}
