import type { BatchPageData } from './batch-page-data.ts';

/** What every entry on a batch is given. */
export interface SheetProps {
  batch: BatchPageData;
  onClose: () => void;
}
