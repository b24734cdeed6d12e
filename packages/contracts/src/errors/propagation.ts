import { errorKind } from './kind.ts';

export const propagationErrors = {
  /** A closed batch takes no more entries; reversing its closing opens it again. */
  'batch-closed': errorKind<{ batch: string; closedOn: string }>('refusal', 409),
  'unit-not-for-method': errorKind<{ unit: string; method: string; fits: string[] }>('input', 400),
  /** The batch's unit and its container do not go together; 'none' stands for no container. */
  'container-not-for-unit': errorKind<{ unit: string; container: string; fits: string[] }>('input', 400),
  'tray-without-cells': errorKind<{ container: string }>('input', 400),
  'more-emerged-than-units': errorKind<{ emerged: number; standing: number; unit: string; batch: string }>(
    'refusal',
    409,
  ),
  /** Potting from cells starts no clock by itself: somebody has to say when the first came up or rooted. */
  'first-alive-unknown': errorKind<{ batch: string; startedOn: string }>('refusal', 422),
  'units-must-leave': errorKind<{ unit: string; batch: string }>('input', 400),
  'lot-not-of-batch': errorKind<{ lot: string; batch: string }>('refusal', 409),
  'potting-is-over': errorKind<{ lot: string; pottedOn: string; lastOn: string }>('refusal', 409),
  'cautious-over-units': errorKind<{ cautious: number; standing: number; unit: string; batch: string }>('refusal', 409),
  /** Of a batch no more plants can usually be expected than stand. */
  'usual-over-units': errorKind<{ usual: number; standing: number; unit: string; batch: string }>('refusal', 409),
  'usual-below-cautious': errorKind<{ usual: number; cautious: number }>('input', 400),
  'protocol-of-other-plant': errorKind<{ protocolPlant: string; plant: string }>('input', 400),
  'protocol-of-other-method': errorKind<{ protocolMethod: string; method: string }>('input', 400),
  'batch-without-protocol': errorKind<{ batch: string }>('refusal', 409),
  /** The protocol has no stage at that place; positions count from 0. */
  'stage-not-in-protocol': errorKind<{ position: number; stages: string[] }>('input', 400),
  /** An earlier stage began after that day. */
  'stage-before-earlier': errorKind<{ stage: string; day: string; earlier: string; earlierOn: string }>('refusal', 409),
  /** A later stage had begun before that day. */
  'stage-after-later': errorKind<{ stage: string; day: string; later: string; laterOn: string }>('refusal', 409),
  'not-packs': errorKind<{ batch: string; unit: string }>('refusal', 409),
  'packs-of-other-plant': errorKind<{ batch: string; plant: string }>('refusal', 409),
  'packs-of-other-source': errorKind<{ batch: string; source: string }>('refusal', 409),
  'units-left': errorKind<{ left: number; unit: string; batch: string }>('refusal', 409),
  'batch-already-there': errorKind<{ batch: string; place: string }>('refusal', 409),
  'nothing-left': errorKind<{ batch: string }>('refusal', 409),
  /** A plant has one protocol for a method and treatment; another version of it is a revision. */
  'protocol-exists': errorKind<{ plant: string; method: string; label: string; isRetired: boolean }>('refusal', 409),
  'protocol-retired': errorKind<{ plant: string; method: string }>('refusal', 409),
  /** Somebody wrote a newer version after this one was read. */
  'protocol-moved-on': errorKind<{ number: number; madeOn: string }>('refusal', 409),
  'protocol-unchanged': errorKind<{ number: number }>('refusal', 409),
  'stage-out-of-order': errorKind<{ stage: string; before: string }>('input', 400),
  'stage-twice': errorKind<{ stage: string }>('input', 400),
  'stage-not-for-method': errorKind<{ stage: string; method: string }>('input', 400),
  /** Of the lengths of a stage, one is shorter than the one before it: `least` is that one's days. */
  'duration-out-of-order': errorKind<{ stage: string; pace: string; than: string; least: number; days: number }>(
    'input',
    400,
  ),
  'temperature-out-of-order': errorKind<{ low: number; high: number }>('input', 400),
  'seeds-for-seed-only': errorKind<{ method: string }>('input', 400),
  'seeds-need-cells': errorKind<{ unit: string }>('input', 400),
} as const;
