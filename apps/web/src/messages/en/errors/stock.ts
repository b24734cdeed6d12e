import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

export const stock = {
  'not-enough-units': ({ available }) =>
    available === 0
      ? 'None are left here.'
      : plural(available, { one: 'Enter 1: only # is there.', other: `Enter ${available} or fewer: # are there.` }),
  'spring-count-differs': ({ lots }) =>
    `What you counted is not what stands there: ${lots.map(({ lot, place, standing, counted }) => `${lot} at ${place} has ${standing}, you counted ${counted}`).join('; ')}. Mend the numbers, or book the difference.`,
  'which-place': ({ places }) =>
    `These plants stand in several places. Say which: ${places.map((place) => `${place.code} (${place.units})`).join(', ')}.`,
  'lot-held': ({ lot }) => `${lot} is on hold. Release it first, or choose another lot.`,
  'place-closed': ({ place, until }) => `${place} is closed until ${days.instant(until)}. Nobody should enter before.`,
  'already-reversed': () => 'This entry has been reversed already.',
  'reversal-is-final': () => 'A reversal cannot be reversed. Enter it anew instead.',
  'units-have-gone': ({ later }) =>
    `The plants have moved on since. Reverse first what came later: ${later.map((entry) => days.long(entry.happenedOn)).join(', ')}.`,
  'cannot-reverse': () => 'This kind of entry cannot be reversed.',
  'may-be-dormant': ({ plant, lastEmergenceMd }) =>
    `${plant} may only be dormant${lastEmergenceMd ? `: it can still come up until ${days.yearly(lastEmergenceMd)}` : ''}. If you have looked at the roots and they are dead, send it once more.`,
  'lots-differ': ({ lots, in: differences }) =>
    `${lots.join(', ')} cannot share a label: their ${differences.join(' and ')} differ. Choose lots of one plant, source and container.`,
  'nothing-there': ({ of }) => `Nothing of ${of} stands there. Choose a lot or a place with plants in it.`,
  'already-held': ({ lot }) => `${lot} is on hold for this reason already.`,
  'not-held': ({ lot }) => `${lot} is not on hold for this reason.`,
  'already-that-plant': ({ of, plant }) => `${of} is ${plant} already. Choose the plant that it really is.`,
  'stands-in-ground': ({ lot }) => `${lot} stands in the ground. Lift it from the bed instead.`,
  'not-in-ground': ({ lot }) => `${lot} stands in pots and cannot be lifted. Pot it up instead.`,
  'not-a-nursery-bed': ({ place }) => `${place} is not a nursery bed. Choose a bed in the ground.`,
  'wrong-container': ({ container, needs }) =>
    needs === 'pot'
      ? `${container} is the ground. Choose a pot or a tray.`
      : `${container} is a container. Choose the ground.`,
} satisfies Partial<ErrorSentences>;
