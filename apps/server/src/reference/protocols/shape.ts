import type { BatchUnit, PropagationMethod, StageDetail, StageKind, Standing } from '@rootclock/domain';

/** A stage with its container by code, which gets its id when the rows are copied into a nursery. */
export interface ReferenceStage extends Omit<StageDetail, 'containerId'> {
  readonly containerCode: string | null;
}

/** What the printed page says in words. */
export interface ReferenceTexts {
  readonly collection: string;
  readonly processing: string;
  readonly prePlanting: string;
  readonly growingArea: string;
  readonly establishment: string;
  readonly activeGrowth: string;
  readonly hardening: string;
  readonly harvest: string;
  readonly storage: string;
  readonly otherNotes: string;
  readonly references: string;
}

/** How one plant is propagated by one method. */
export interface ReferenceProtocol {
  readonly plantCode: string;
  readonly method: PropagationMethod;
  readonly startUnit: BatchUnit;
  readonly startContainerCode: string | null;
  readonly targetContainerCode: string;
  readonly seedsPerCell: number | null;
  /** Of the method's being used for this plant at all; each figure has a standing of its own. */
  readonly standing: Standing;
  readonly source: string | null;
  readonly stages: readonly ReferenceStage[];
  readonly texts: ReferenceTexts;
}

/** What is known of a plant's protocol beyond its facts. */
export interface Particulars {
  readonly stages?: Partial<Record<StageKind, Partial<ReferenceStage>>>;
  readonly texts?: Partial<ReferenceTexts>;
  readonly targetContainerCode?: string;
}
