import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const people = {
  'wrong-sign-in': () => 'Esta dirección y esta contraseña no van juntas. Revise las dos.',
  'too-many-sign-ins': ({ waitMinutes }) => plural(waitMinutes, { one: 'Demasiados intentos. Espere # minuto e intente de nuevo.', other: 'Demasiados intentos. Espere # minutos e intente de nuevo.' }),
  'nursery-exists': () => 'Este servidor ya tiene un vivero. Entre con su cuenta.',
  'email-taken': ({ email }) => `Ya hay alguien con la dirección ${email}.`,
  'last-owner': () => 'Un vivero necesita al menos una persona dueña. Nombre antes a otra.',
  'wrong-password': () => 'Esta no es su contraseña actual. Escríbala otra vez.',
  'unknown-zone': ({ zone }) => `${zone} no es una zona horaria. Elija una de la lista.`,
} satisfies Partial<ErrorSentences>;
