import type { substitutes as english } from '../../en/settings/substitutes.ts';
import { plural } from '../words.ts';

export const substitutes: typeof english = {
  title: 'Qué puede sustituir',
  lead: 'Al anotar un renglón, estas reglas ofrecen lo que podría ir en lugar de su planta. Usted decide qué acepta el cliente. De varias reglas de una clase cuenta la más particular.',
  add: 'Añadir una regla',
  change: 'Cambiar',
  changeRule: (rule) => `Cambiar: ${rule}`,
  emptyTitle: 'Todavía no hay reglas',
  emptyText: 'Sin reglas cada alternativa se anota a mano.',
  who: { all: 'Todas las plantas', genus: (genus) => `Todo el género ${genus}`, plant: (name) => name },
  kinds: {
    'another-size': 'otro tamaño',
    'same-genus': 'otra nativa del género',
    'same-habit': 'misma altura, luz y época',
  },
  sentences: {
    'another-size': 'Puede ir la misma planta en otra maceta.',
    'same-genus': 'Puede ir otra planta del género en la misma maceta, si es nativa de la región del sitio.',
    'same-habit':
      'Puede ir otra planta en la misma maceta, si es de la misma clase de altura, está en la misma luz y florece al menos en la mitad de los mismos meses.',
  },
  penalty: (penalty) => `Penalización ${penalty}`,
  reaches: (plants) =>
    plural(plants, { zero: 'Ahora no toca a ninguna planta.', one: 'Toca a # planta.', other: 'Toca a # plantas.' }),
  untoldPlants: (count) =>
    plural(count, {
      zero: '',
      one: 'Nada dice de # de ellas, cuya página no cuenta altura, luz o floración.',
      other: 'Nada dice de # de ellas, cuyas páginas no cuentan altura, luz o floración.',
    }),
  saved: 'La regla está guardada.',
  retired: 'La regla está retirada. Lo que los renglones tomaron por ella sigue siendo suyo.',
  retire: 'Retirar',
  form: {
    addTitle: 'Añadir una regla',
    kind: 'Qué puede sustituir',
    reach: 'A quién',
    reachWords: { all: 'todas', genus: 'un género', plant: 'una planta' },
    genus: 'Género',
    penalty: 'Penalización',
    penaltyHint: 'De 1 a 100. Donde varias cosas podrían ir, la penalización menor va primero.',
    note: 'Nota',
    save: 'Guardar la regla',
  },
  offer: {
    title: 'Según sus reglas',
    found: (count) =>
      plural(count, {
        zero: 'Según sus reglas nada más podría ir en su lugar.',
        one: 'Según sus reglas # cosa podría ir en su lugar.',
        other: 'Según sus reglas # cosas podrían ir en su lugar.',
      }),
    taken: (count) => plural(count, { zero: '', one: 'Este renglón ya acepta #.', other: 'Este renglón ya acepta #.' }),
    which: 'Cuáles y por qué',
    whyNone: 'Qué no se ofreció y por qué',
    take: 'Tomar',
    takeOne: (plant, container) => `Tomar ${plant}, ${container}`,
    takeAll: (count) => plural(count, { one: 'Tomarla', other: 'Tomar las #' }),
    because: {
      'another-size': () => 'La misma planta en otra maceta.',
      'same-genus': (genus) => `Otra ${genus}.`,
    },
    habit: (height, lights, months) =>
      `De altura ${height}, para la misma luz (${lights}), en flor con ella en ${months}.`,
    heights: { low: 'baja', medium: 'media', tall: 'alta', 'very-tall': 'muy alta' },
    lights: { 'full-sun': 'pleno sol', 'part-sun': 'media sombra', shade: 'sombra' },
    native: (region) => `Nativa de ${region}.`,
    notNative: (region) => `No consta que sea nativa de ${region}.`,
    standing: (onHand, growing) =>
      [
        onHand > 0 ? plural(onHand, { one: '# aquí', other: '# aquí' }) : '',
        growing > 0 ? plural(growing, { one: '# creciendo', other: '# creciendo' }) : '',
      ]
        .filter(Boolean)
        .join(', '),
    noRegion:
      'No se ofrecen otras plantas del género: no se ha elegido un sitio con región, y nadie puede decir qué es nativo allí.',
    traits: { height: 'altura', light: 'luz', bloom: 'meses de floración' },
    untoldTraits: (traits) =>
      `No se ofrecen plantas del mismo porte: la página de esta planta no cuenta (${traits}), o no con palabras que se puedan leer.`,
    leftOut: (region) =>
      region === null
        ? 'Quedan fuera, porque el sitio no tiene región:'
        : `Quedan fuera, porque no consta que sean nativas de ${region}:`,
    passedOver: 'Se pasaron por alto, porque sus páginas no cuentan altura, luz o floración:',
    full: 'Un renglón acepta 20 alternativas como máximo. Quite una para tomar otra.',
  },
};
