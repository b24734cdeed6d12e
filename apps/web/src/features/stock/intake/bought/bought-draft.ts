/** A delivery as it is typed: what a further line takes from the one above, and the body that is sent. */
import type { BoughtForm, CountKind, SourceOrigin } from '@rootclock/domain';
import { newId } from '../../../../lib/ids.ts';
import type { PickedContainer } from '../../../plants/container-picker.tsx';
import type { PickedPlant } from '../../../plants/plant-picker.tsx';
import type { PickedPlace } from '../../places/place-picker.tsx';

export interface BoughtLine {
  lotId: string;
  plant: PickedPlant | null;
  form: BoughtForm;
  container: PickedContainer | null;
  place: PickedPlace | null;
  invoicedUnits: number | null;
  receivedUnits: number | null;
  vendorLot: string;
  provenance: string;
  seedZone: string;
  origin: SourceOrigin;
  sown: string;
  germinationDays: number | null;
  inPotSince: string;
  countKind: CountKind;
  rootChecked: boolean;
}

export interface BoughtDraft {
  happenedOn: string;
  vendor: string;
  pesticideStatement: string;
  quarantine: boolean;
  lines: BoughtLine[];
}

/** A further line: form, container and place are as above, the rest is its own. */
export const lineBelow = (above?: BoughtLine): BoughtLine => ({
  lotId: newId(),
  plant: null,
  form: above?.form ?? 'plugs',
  container: above?.container ?? null,
  place: above?.place ?? null,
  invoicedUnits: null,
  receivedUnits: null,
  vendorLot: '',
  provenance: '',
  seedZone: '',
  origin: 'unknown',
  sown: '',
  germinationDays: null,
  inPotSince: '',
  countKind: 'counted',
  rootChecked: false,
});

export const boughtBody = ({ happenedOn, vendor, pesticideStatement, quarantine, lines }: BoughtDraft) => ({
  happenedOn,
  vendor,
  pesticideStatement,
  quarantine,
  lines: lines.map(({ plant, container, place, sown, germinationDays, inPotSince, ...line }) => {
    const grown = line.form !== 'bare-root';
    return {
      ...line,
      plantId: plant?.id ?? '',
      containerId: container?.id ?? '',
      placeId: place?.id ?? '',
      sown: grown ? sown || null : null,
      germinationDays: grown ? germinationDays : null,
      inPotSince: line.form === 'pots' ? inPotSince || null : null,
    };
  }),
});

/** Received less invoiced over all lines that have an invoice. */
export const differenceOf = (lines: readonly { differenceUnits: number | null }[]): number =>
  lines.reduce((sum, line) => sum + (line.differenceUnits ?? 0), 0);
