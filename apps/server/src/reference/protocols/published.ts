import type { PropagationMethod } from '@rootclock/domain';
import * as cited from '../cited.ts';
import type { Particulars } from './shape.ts';

const TOPPING = 'Topping, Dumroese & Pinto 2019, Native Plants Journal 20:48-58';

/** What published protocols and trials say of single stages, where a plant's facts do not carry it already. By plant and method. */
export const published: Readonly<Record<string, Partial<Record<PropagationMethod, Particulars>>>> = {
  ASIN: {
    seed: {
      stages: {
        stratification: {
          shortDays: 7,
          usualDays: 45,
          longDays: 45,
          durationSource: `${cited.NPN_INCARNATA}: 7 days at least; 45 days after an ESA 2017 abstract, in which 10 days gave less than half`,
          note: '7 days at least are printed, and longer does no harm.',
        },
      },
    },
  },
  ASSY: {
    seed: {
      stages: {
        stratification: {
          temperatureLowC: 5,
          temperatureHighC: 5,
          note: 'Two weeks at 5 °C broke dormancy (Kaye et al. 2018, AoB PLANTS 10 ply018); one week gave 75.3 percent in one regime (Baskin & Baskin 1977).',
        },
      },
    },
  },
  ASSP: {
    seed: {
      stages: {
        emergence: {
          shortDays: 7,
          usualDays: 11,
          longDays: 14,
          durationStanding: 'confirmed',
          durationSource: `${cited.NPN_SPECIOSA}: 1 to 2 weeks, the middle taken`,
        },
      },
      targetContainerCode: 'cone-164',
    },
    'root-cutting': {
      stages: {
        stratification: {
          temperatureLowC: 0.5,
          temperatureHighC: 2,
          share: 0.9,
          shareStanding: 'confirmed',
          shareSource: `${TOPPING}: stored roots lived up to 90 percent`,
          note: 'Up to 90 percent is printed: the best of the trial, not its mean. Stored at 0.5 to 2 °C.',
        },
      },
      texts: { storage: `Taproots stored at 0.5 to 2 °C; up to 90 percent lived (${TOPPING}).` },
    },
  },
  ECPA: {
    seed: {
      stages: {
        stratification: { temperatureLowC: 1, temperatureHighC: 3 },
        sowing: {
          light: 'surface-light',
          depthMm: 0,
          note: 'Sown on the surface: light is needed (printed). The season is common practice.',
        },
        emergence: { temperatureLowC: 21, temperatureHighC: 21, light: 'surface-light' },
      },
      targetContainerCode: 'cone-164',
    },
  },
  LIPY: {
    seed: {
      stages: {
        emergence: {
          temperatureLowC: 19,
          temperatureHighC: 33,
          note: 'At 33 °C by day and 19 °C by night, as printed.',
        },
      },
    },
  },
  LUPE: {
    seed: {
      stages: {
        scarification: {
          note: 'Seed coats nicked or rubbed with sandpaper; the trial used acid, 15 minutes for about 90 percent, which is only for trained hands with goggles and gloves. Under 15 percent came up of intact seed.',
        },
        emergence: {
          shortDays: 3,
          usualDays: 3,
          longDays: 14,
          temperatureLowC: 21,
          temperatureHighC: 29,
          note: 'More than 80 percent within 54 hours at 21 to 29 °C, about 60 at 32 °C, less than 4 from 35 °C on (printed). The longest time is assumed.',
        },
      },
    },
  },
  MOFI: { seed: { stages: { emergence: { light: 'surface-light' } }, targetContainerCode: 'cone-164' } },
  RUHI: {
    seed: {
      stages: {
        emergence: {
          share: 0.87,
          shareSource: `${cited.NPN_RUDBECKIA}: three lots with 22, 87 and 90 percent, the middle one taken`,
        },
      },
    },
  },
};
