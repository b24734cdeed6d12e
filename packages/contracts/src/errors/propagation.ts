import { errorKind } from './kind.ts';

export const propagationErrors = {
  /** A closed batch takes no more entries; reversing its closing opens it again. */
  'batch-closed': errorKind<{ batch: string; closedOn: string }>('refusal', 409),
  'unit-not-for-method': errorKind<{ unit: string; method: string; fits: string[] }>('input', 400),
  /** The batch's unit and its container do not go together; 'none' stands for no container. */
  'container-not-for-unit': errorKind<{ unit: string; container: string; fits: string[] }>('input', 400),
  'tray-without-cells': errorKind<{ container: string }>('input', 400),
  'more-emerged-than-units': errorKind<{ emerged: number; standing: number; unit: string; batch: string }>('refusal', 409),
  /** Potting from cells starts no clock by itself: somebody has to say when the first came up or rooted. */
  'first-alive-unknown': errorKind<{ batch: string; startedOn: string }>('refusal', 422),
  'units-must-leave': errorKind<{ unit: string; batch: string }>('input', 400),
  'lot-not-of-batch': errorKind<{ lot: string; batch: string }>('refusal', 409),
  'potting-is-over': errorKind<{ lot: string; pottedOn: string; lastOn: string }>('refusal', 409),
  'cautious-over-units': errorKind<{ cautious: number; standing: number; unit: string; batch: string }>('refusal', 409),
  'units-left': errorKind<{ left: number; unit: string; batch: string }>('refusal', 409),
  'batch-already-there': errorKind<{ batch: string; place: string }>('refusal', 409),
  'nothing-left': errorKind<{ batch: string }>('refusal', 409),
} as const;
