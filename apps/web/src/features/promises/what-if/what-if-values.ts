/** What is typed on the page of what if, and as which change it is asked about. */
import { promises as contracts, readInput } from '@rootclock/contracts';
import type { PickedClient } from '../../clients/client-picker.tsx';
import type { Item } from '../../orders/pickers/item-pickers.tsx';

/** An order, lot or batch by its code. */
export interface Picked {
  id: string;
  code: string;
}

export interface WhatIfValues extends Item {
  kind: contracts.WhatIfKind | '';
  order: Picked | null;
  lot: Picked | null;
  batch: Picked | null;
  units: number | null;
  placeId: string;
  dueOn: string;
  client: PickedClient | null;
  siteId: string;
  cautiousUnits: number | null;
  readyOn: string;
}

export const NOTHING: WhatIfValues = {
  kind: '',
  order: null,
  lot: null,
  batch: null,
  plant: null,
  container: null,
  units: null,
  placeId: '',
  dueOn: '',
  client: null,
  siteId: '',
  cautiousUnits: null,
  readyOn: '',
};

function bodyOf(values: WhatIfValues): unknown {
  const { kind, units } = values;
  const placeId = values.placeId || null;
  switch (kind) {
    case '':
      return null;
    case 'move-order':
      return { kind, orderId: values.order?.id, dueOn: values.dueOn };
    case 'cancel-order':
      return { kind, orderId: values.order?.id, placeId };
    case 'add-order':
      return {
        kind,
        plantId: values.plant?.id,
        containerId: values.container?.id,
        units,
        dueOn: values.dueOn,
        clientId: values.client?.id ?? null,
        siteId: values.siteId || null,
      };
    case 'lose-lot':
      return { kind, lotId: values.lot?.id, units, placeId };
    case 'lose-batch':
      return { kind, batchId: values.batch?.id, units, placeId };
    case 'change-batch':
      return { kind, batchId: values.batch?.id, cautiousUnits: values.cautiousUnits, readyOn: values.readyOn || null };
  }
}

/** The change as the server takes it, or what of it is missing or wrong. */
export const readChange = (values: WhatIfValues) => readInput(contracts.whatIfAnything, bodyOf(values));

export type WhatIfChange = Extract<ReturnType<typeof readChange>, { ok: true }>['data'];
export type ChangeOf<Kind extends WhatIfChange['kind']> = Extract<WhatIfChange, { kind: Kind }>;

/** What of another kind of change still holds. */
export const forKind = (values: WhatIfValues, kind: WhatIfValues['kind']): WhatIfValues => ({
  ...values,
  kind,
  units: null,
  placeId: '',
});
