import type { promises } from '@rootclock/contracts';
import type { ReactNode } from 'react';
import type { WhatIfChange, WhatIfValues } from '../what-if-values.ts';

/** What keeping a change is given. */
export interface KeepProps<Change = WhatIfChange> {
  change: Change;
  answer: promises.WhatIf;
  values: WhatIfValues;
  /** The button that drops the change, to stand beside the one that keeps it. */
  drop: ReactNode;
}
