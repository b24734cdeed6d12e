import type { words as en } from '../../en/stock-in/words.ts';
import { plural } from '../words.ts';

export const words: typeof en = {
  placeKinds: {
    house: 'invernadero',
    bay: 'nave',
    bench: 'mesa',
    yard: 'cuadro del patio',
    'cold-frame': 'cajonera',
    staging: 'zona de salida',
    'nursery-bed': 'bancal (en el suelo)',
    quarantine: 'cuarentena',
  },
  countKinds: { counted: 'contado', sampled: 'por muestra', estimated: 'estimado' },
  forms: { plugs: 'plántulas en alvéolo', 'bare-root': 'raíz desnuda', pots: 'macetas' },
  bands: { past: 'pasó su día', due: 'ya toca', coming: 'se acerca', ample: 'tiene tiempo', unlimited: 'sin límite' },
  holds: {
    quarantine: 'cuarentena',
    treated: 'tratado',
    'mother-stock': 'planta madre',
    inspector: 'orden del inspector',
  },
  units: (count) => plural(count, { one: '# planta', other: '# plantas' }),
  lots: (count) => plural(count, { one: '# lote', other: '# lotes' }),
  batches: (count) => plural(count, { one: '# tanda', other: '# tandas' }),
  tabs: {
    label: 'Vistas de las existencias',
    board: 'Tablero de plazos',
    table: 'Todos los lotes',
    places: 'Lugares',
    sources: 'Procedencias',
    takeIn: 'Registrar',
  },
};
