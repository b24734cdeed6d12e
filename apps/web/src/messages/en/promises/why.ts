import type { promises } from '@rootclock/contracts';
import { days, plural } from '../words.ts';

type Row = promises.ReservationExplanation;
const leaving = (plantByOn: string | null): string =>
  plantByOn ? `to be planted by ${days.long(plantByOn)}` : 'without a plant-by day';

/** Why a line holds the plants that it holds. */
export const why = {
  title: 'Why these plants',
  turn: (before: number) =>
    plural(before, {
      zero: 'This line is served before all others that take such plants.',
      one: '# line that takes such plants was promised them earlier and is served first.',
      other: '# lines that take such plants were promised them earlier and are served first.',
    }),
  reasons: {
    pinned: ({ code }) => `${code}: tied to this line by hand or by a pull list.`,
    only: ({ code }) => `${code}: nothing else here serves this line.`,
    'rest-is-promised': ({ code }) => `${code}: all else that serves this line is promised to others.`,
    'asked-for': ({ code, instead }) =>
      `${code}: it is what was asked for; ${instead?.code ?? ''} would only stand in for it.`,
    'leaves-first': ({ code, plantByOn, instead }) =>
      `${code} goes first: ${leaving(plantByOn)}, while ${instead?.code ?? ''} is ${leaving(instead?.plantByOn ?? null)}.`,
    'as-good': ({ code, instead }) => `${code}: ${instead?.code ?? ''} is free and would do as well.`,
  } satisfies Record<Row['reason'], (row: Row) => string> as Record<Row['reason'], (row: Row) => string>,
  sooner: ({ code, plantByOn, orders }: Row['sooner'][number]) =>
    `${code} must leave sooner (${leaving(plantByOn)}) and is promised to ${orders.join(', ')}.`,
};
