import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const plants = {
  'plant-exists': ({ plant, code, isRetired }) =>
    isRetired
      ? `${plant} ya está aquí como ${code}, pero retirada. Abra su página y recupérela.`
      : `${plant} ya está aquí como ${code}.`,
  'name-is-synonym': ({ name, plant }) =>
    `${name} es aquí otro nombre de ${plant}. Si son dos plantas, quítelo allí primero.`,
  'name-taken': ({ name, plant }) => `${plant} ya tiene el nombre ${name}.`,
  'plant-stands': ({ plant, units, batches }) =>
    units > 0
      ? plural(units, {
          one: `Todavía hay # unidad de ${plant}. Véndala, plántela o dela de baja primero.`,
          other: `Todavía hay # unidades de ${plant}. Véndalas, plántelas o delas de baja primero.`,
        })
      : plural(batches, {
          one: `Todavía hay # siembra abierta de ${plant}. Ciérrela primero.`,
          other: `Todavía hay # siembras abiertas de ${plant}. Ciérrelas primero.`,
        }),
  'cells-need-tray': () => 'Solo las bandejas tienen celdas. Déjelo vacío.',
  'tray-needs-cells': () => 'Escriba cuántas celdas tiene la bandeja.',
} satisfies Partial<ErrorSentences>;
