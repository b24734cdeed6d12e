import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

export const stockIn = {
  'place-not-empty': ({ place, units, lots, batches }) =>
    `${plural(units, { one: `# unit still stands at ${place}`, other: `# units still stand at ${place}` })} (${plural(lots, { one: '# lot', other: '# lots' })}, ${plural(batches, { one: '# batch', other: '# batches' })}). Move everything away first.`,
  'place-has-places': ({ place, places }) =>
    `${plural(places, { one: `# other place lies in ${place}`, other: `# other places lie in ${place}` })}. Give those up or move them first.`,
  'place-in-itself': ({ place }) => `${place} cannot lie in itself or in a place that lies in it. Choose another.`,
  'place-retired': ({ place }) => `${place} is given up. Bring it back on its page, or choose another.`,
  'closed-for-longer': ({ place, until, reason }) =>
    `${place} is already closed until ${days.instant(until)} (${reason}). Choose a later time, or open the place with a reason.`,
  'closing-is-past': () => 'That time is over. Choose a later one.',
  'place-not-closed': ({ place }) => `${place} is open.`,
  'day-after-intake': ({ day, intakeOn }) =>
    `${days.long(day)} is later than the ${days.long(intakeOn)} of this entry. Choose that day or an earlier one.`,
} satisfies Partial<ErrorSentences>;
