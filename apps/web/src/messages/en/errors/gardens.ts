import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const gardens = {
  'plants-are-staged': ({ order, units }) =>
    plural(units, {
      one: `# plant is still pulled for ${order}. Plant it, bring it back, or say where it goes.`,
      other: `# plants are still pulled for ${order}. Plant them, bring them back, or say where they go.`,
    }),
  'root-ball-not-checked': ({ lots }) =>
    `Nobody has checked the root balls of ${lots.join(', ')}. Look at one first; if it holds, send this once more.`,
  'not-enough-staged': ({ staged, of }) =>
    staged === 0
      ? `None of ${of} are pulled for this line.`
      : `Enter ${staged} or fewer: ${staged} of ${of} are pulled for this line.`,
  'not-accepted': ({ lot, accepted }) =>
    `This line does not take ${lot}. It takes ${accepted.join(', ')}. Add the plant as an alternative first.`,
  'no-quarantine-place': () => 'There is no place of the kind quarantine. Choose where the plants go.',
  'cause-needed': () => 'Say why these plants are lost.',
  'orders-are-open': ({ orders }) =>
    `${orders.join(', ')} ${orders.length === 1 ? 'is' : 'are'} still open. Finish or cancel first.`,
} satisfies Partial<ErrorSentences>;
