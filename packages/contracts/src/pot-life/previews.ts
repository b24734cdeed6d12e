import * as z from 'zod/mini';
import { addRule, editRule, retireRule } from './rules.ts';
import { addWindow, editWindow, retireWindow, setFreezeDay } from './windows.ts';

/** The change a command would make, for asking what it would do to what stands in pots before it is made. */
export const previewChange = z.strictObject({
  change: z.union([
    z.strictObject({ command: z.literal('addRule'), body: addRule }),
    z.strictObject({ command: z.literal('editRule'), body: editRule }),
    z.strictObject({ command: z.literal('retireRule'), body: retireRule }),
    z.strictObject({ command: z.literal('addWindow'), body: addWindow }),
    z.strictObject({ command: z.literal('editWindow'), body: editWindow }),
    z.strictObject({ command: z.literal('retireWindow'), body: retireWindow }),
    z.strictObject({ command: z.literal('setFreezeDay'), body: setFreezeDay }),
  ]),
});
