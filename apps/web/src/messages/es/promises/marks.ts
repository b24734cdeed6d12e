import type { marks as english } from '../../en/promises/marks.ts';
import { days, plural } from '../words.ts';

export const marks: typeof english = {
  wanted: (count) => plural(count, { one: '# pedida', other: '# pedidas' }),
  reserved: (count) => plural(count, { one: '# reservada', other: '# reservadas' }),
  pulled: (count) => plural(count, { one: '# sacada', other: '# sacadas' }),
  planted: (count) => plural(count, { one: '# plantada', other: '# plantadas' }),
  handedOver: (count) => plural(count, { one: '# entregada', other: '# entregadas' }),
  short: (count) => plural(count, { one: 'falta #', other: 'faltan #' }),
  allReserved: (count) => plural(count, { one: 'La única planta, reservada', other: 'Las # reservadas' }),
  allPulled: (count) => plural(count, { one: 'La única planta, sacada', other: 'Las # sacadas' }),
  allPlanted: (count) => plural(count, { one: 'La única planta, plantada', other: 'Las # plantadas' }),
  allHandedOver: (count) => plural(count, { one: 'La única planta, entregada', other: 'Las # entregadas' }),
  noLines: 'Todavía sin renglones',
  progress: 'Cómo va',

  plantBy: (on, away) => `plantar a más tardar el ${days.long(on)}, ${away}`,
  plantByPast: (on, away) => `debió plantarse a más tardar el ${days.long(on)}, ${away}`,
  noLimit: 'sin límite de tiempo en la maceta',
  noWindow: 'no queda época de plantación antes de su límite',
  leaveBy: (on) => `sale de aquí a más tardar el ${days.long(on)}`,
  readyOn: (on) => `se espera lista el ${days.long(on)}`,
  readyUnknown: 'aún no se sabe cuándo estará lista',
  notChecked: 'cepellón sin revisar',

  flags: { 'ambiguous-name': 'Nombre compartido', 'not-native': 'No es nativa aquí', 'livestock-near': 'Ganado cerca' },
  ambiguousName:
    'La gente da el mismo nombre común a otras plantas. Guíese por el nombre científico; otros pueden querer decir:',
  andMore: (count) => plural(count, { one: 'y # más', other: 'y # más' }),
  notNative: (plant, region) => `${plant} no figura como nativa de ${region ?? 'la región de este sitio'}.`,
  livestockNear: (plant) =>
    `${plant} es venenosa para los animales y cerca de este sitio hay ganado. Pregunte al cliente por dónde andan los animales y mantenga plantas y recortes fuera de su alcance.`,
};
