export const FEATURES = ['plants', 'sources', 'stock', 'pot-life', 'propagation', 'promises', 'gardens', 'planning', 'people'] as const;
export type FeatureName = (typeof FEATURES)[number];

/** What a command changed. The runner replans these and tells browsers which features to read again. */
export class Touched {
  readonly lots = new Set<string>();
  readonly batches = new Set<string>();
  readonly lines = new Set<string>();
  readonly features = new Set<FeatureName>();
  /** A rule, window, plant or container changed: every open lot's clock is reckoned anew. */
  allClocks = false;
  /** Time alone or a setting changed what may be promised: every open line is looked at. */
  allPromises = false;

  lot(id: string): void {
    this.lots.add(id);
    this.features.add('stock');
  }
  batch(id: string): void {
    this.batches.add(id);
    this.features.add('propagation');
  }
  line(id: string): void {
    this.lines.add(id);
    this.features.add('gardens');
  }
}
