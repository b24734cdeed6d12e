import type { potLife } from '@rootclock/contracts';
import type { PlantingWindow } from '@rootclock/domain';
import type * as z from 'zod/mini';

/** A window as it would be added or changed. */
export function windowOf({
  windowId,
  opensMd,
  closesMd,
  maxContainerMl,
  region,
}: z.output<typeof potLife.addWindow>): PlantingWindow {
  return { id: windowId, opensMd, closesMd, maxContainerMl, region };
}
