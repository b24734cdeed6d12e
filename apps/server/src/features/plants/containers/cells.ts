import type { ContainerKind } from '@rootclock/domain';
import { refuse } from '../../../refusal.ts';

/** Batches in cells are counted by the tray's cells: a tray without them, or a pot with some, would count wrong. */
export function requireCells(kind: ContainerKind, cells: number | null): void {
  if (kind === 'tray' && cells === null) refuse('tray-needs-cells', undefined, 'cells');
  if (kind !== 'tray' && cells !== null) refuse('cells-need-tray', undefined, 'cells');
}
