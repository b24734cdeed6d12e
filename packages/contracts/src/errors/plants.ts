import { errorKind } from './kind.ts';

export const plantsErrors = {
  /** A plant has this accepted name already, perhaps a retired one. */
  'plant-exists': errorKind<{ plant: string; code: string; isRetired: boolean }>('refusal', 409),
  /** The name is a synonym of a plant that is there: one plant would be kept under two names. */
  'name-is-synonym': errorKind<{ name: string; plant: string }>('refusal', 409),
  'name-taken': errorKind<{ name: string; plant: string }>('refusal', 409),
  'plant-stands': errorKind<{ plant: string; units: number; batches: number }>('refusal', 409),
  /** Cells belong to trays and to nothing else. */
  'cells-need-tray': errorKind('input', 400),
  'tray-needs-cells': errorKind('input', 400),
} as const;
