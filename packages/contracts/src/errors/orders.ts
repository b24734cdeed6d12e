import { errorKind } from './kind.ts';

export const ordersErrors = {
  /** The order is done or cancelled, so nothing of it can be changed. */
  'order-not-open': errorKind<{ order: string; state: string }>('refusal', 409),
  'line-withdrawn': errorKind<{ plant: string }>('refusal', 409),
  'site-needed': errorKind('input', 400),
  'site-of-other-client': errorKind<{ site: string }>('input', 400),
  'bed-of-other-site': errorKind<{ bed: string }>('input', 400),
  /** The same item stands twice among what a line accepts. */
  'alternative-twice': errorKind<{ plant: string }>('input', 400),
  /** Plants in plug trays are promised in whole trays; `below` is null where not even one is asked for. */
  'whole-trays-only': errorKind<{ cells: number; below: number | null; above: number }>('input', 400),
  /** A line counts in one thing: trays of so many cells, or plants by the piece (null). */
  'other-trays': errorKind<{ container: string; cells: number | null; asked: number | null }>('input', 400),
  /** Another kit that is offered has this name. */
  'kit-name-taken': errorKind<{ name: string }>('refusal', 409),
  'kit-retired': errorKind<{ kit: string }>('refusal', 409),
  'component-twice': errorKind<{ plant: string }>('input', 400),
  /** So many lines were meant, but the kit has changed since. */
  'kit-changed': errorKind<{ kit: string }>('refusal', 409),
  /** A line that says it comes with a kit asks for something else than the kit takes. */
  'not-of-kit': errorKind<{ kit: string; units: number | null }>('refusal', 409),
  /** The order takes only what is native to the region of its site, and this plant is not known to be. */
  'not-native-here': errorKind<{ plant: string; region: string }>('input', 400),
  /** Without a region nothing can be called native. */
  'natives-need-region': errorKind<{ site: string | null }>('refusal', 422),
  'wrong-order-kind': errorKind<{ order: string; kind: string }>('refusal', 409),
} as const;
