import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

export const stockIn = {
  'place-not-empty': ({ place, units, lots, batches }) =>
    `${plural(units, { one: `Todavía hay # unidad en ${place}`, other: `Todavía hay # unidades en ${place}` })} (${plural(lots, { one: '# lote', other: '# lotes' })}, ${plural(batches, { one: '# tanda', other: '# tandas' })}). Muévalo todo antes.`,
  'place-has-places': ({ place, places }) =>
    `${plural(places, { one: `# lugar está dentro de ${place}`, other: `# lugares están dentro de ${place}` })}. Déjelos o muévalos antes.`,
  'place-in-itself': ({ place }) => `${place} no puede estar dentro de sí mismo ni de un lugar suyo. Elija otro.`,
  'place-retired': ({ place }) => `${place} ya no se usa. Recupérelo en su página o elija otro.`,
  'closed-for-longer': ({ place, until, reason }) =>
    `${place} ya está cerrado hasta ${days.instant(until)} (${reason}). Elija una hora posterior o ábralo con un motivo.`,
  'closing-is-past': () => 'Esa hora ya pasó. Elija una posterior.',
  'place-not-closed': ({ place }) => `${place} está abierto.`,
  'day-after-intake': ({ day, intakeOn }) =>
    `El ${days.long(day)} es posterior al ${days.long(intakeOn)} de esta anotación. Elija ese día o uno anterior.`,
} satisfies Partial<ErrorSentences>;
