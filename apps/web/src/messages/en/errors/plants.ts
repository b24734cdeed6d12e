import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const plants = {
  'plant-exists': ({ plant, code, isRetired }) =>
    isRetired
      ? `${plant} is here already as ${code}, but retired. Open its page and take it back.`
      : `${plant} is here already as ${code}.`,
  'name-is-synonym': ({ name, plant }) =>
    `${name} is another name of ${plant} here. If they are two plants, remove it there first.`,
  'name-taken': ({ name, plant }) => `${plant} has the name ${name} already.`,
  'plant-stands': ({ plant, units, batches }) =>
    units > 0
      ? plural(units, {
          one: `# unit of ${plant} still stands here. Sell, plant or write it off first.`,
          other: `# units of ${plant} still stand here. Sell, plant or write them off first.`,
        })
      : plural(batches, {
          one: `# batch of ${plant} is still open. Close it first.`,
          other: `# batches of ${plant} are still open. Close them first.`,
        }),
  'cells-need-tray': () => 'Only trays have cells. Leave this empty.',
  'tray-needs-cells': () => 'Enter how many cells the tray has.',
} satisfies Partial<ErrorSentences>;
