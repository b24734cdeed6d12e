import type { ErrorSentences } from '../../errors.ts';
import { days, plural } from '../words.ts';

export const general = {
  'invalid-input': () => 'Algo aquí todavía no está bien.',
  'not-signed-in': () => 'Su sesión terminó. Entre de nuevo; lo que anotó queda guardado.',
  'another-person': () =>
    'Ahora otra persona tiene la sesión abierta. Lo que anotó queda guardado hasta que usted entre de nuevo.',
  'not-allowed': () => 'Su función no permite esto. Una persona dueña puede cambiar lo que usted puede hacer.',
  'not-found': () => 'Esto no existe en su vivero.',
  'forged-request': () =>
    'El servidor no confió en el origen de este pedido. Abra Rootclock en su propia dirección e intente de nuevo.',
  'body-too-large': ({ mostKilobytes }) =>
    `Es demasiado para enviarlo de una vez: el máximo es ${mostKilobytes} kB. Envíe menos líneas cada vez.`,
  'too-many-requests': ({ waitSeconds }) =>
    plural(waitSeconds, {
      one: 'Llegaron demasiados pedidos desde su dirección. Espere # segundo e intente de nuevo.',
      other: 'Llegaron demasiados pedidos desde su dirección. Espere # segundos e intente de nuevo.',
    }),
  'too-much-at-once': () => 'Pidió demasiado a la vez. Espere un momento e intente de nuevo.',
  'command-id-reused': () => 'Esta anotación ya se envió con otro contenido. Recargue la página y anótela otra vez.',
  'id-taken': () => 'Esto ya existe. Recargue la página para verlo.',
  'code-taken': ({ code }) => `El código ${code} ya está en uso. Elija otro.`,
  'edited-meanwhile': ({ by }) =>
    `${by ?? 'Otra persona'} cambió esto mientras usted escribía. Todavía no se guardó nada.`,
  'day-in-future': ({ day, today }) => `El ${days.long(day)} aún no llega. Elija el ${days.long(today)} o antes.`,
  'day-too-early': ({ day, earliest }) =>
    `El ${days.long(day)} es antes del comienzo. Elija el ${days.long(earliest)} o después.`,
  'outcome-unknown': () => 'El servidor no pudo decir si esto quedó anotado. Se le pregunta otra vez.',
  fault: () => 'El servidor tropezó. Nada se perdió; intente de nuevo en un momento.',
} satisfies Partial<ErrorSentences>;
