import type { Target } from '../lot-data.ts';

/** What a sheet over one lot or many is given. `onDone` closes it after the entry was saved. */
export interface TargetSheetProps {
  target: Target;
  onClose: () => void;
  onDone: () => void;
}
