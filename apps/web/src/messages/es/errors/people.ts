import type { ErrorSentences } from '../../errors.ts';
import { plural } from '../words.ts';

export const people = {
  'wrong-sign-in': () => 'Esta dirección y esta contraseña no van juntas. Revise las dos.',
  'too-many-sign-ins': ({ waitSeconds }) =>
    waitSeconds < 60
      ? plural(waitSeconds, {
          one: 'Demasiados intentos. Espere # segundo e intente de nuevo.',
          other: 'Demasiados intentos. Espere # segundos e intente de nuevo.',
        })
      : plural(Math.ceil(waitSeconds / 60), {
          one: 'Demasiados intentos. Espere # minuto e intente de nuevo.',
          other: 'Demasiados intentos. Espere # minutos e intente de nuevo.',
        }),
  'sign-ins-busy': () => 'Demasiadas personas están entrando a la vez. Espere un momento e intente de nuevo.',
  'not-in-a-batch': () => 'Esto tiene que enviarse solo. Vuelva a cargar la página e intente de nuevo.',
  'nursery-exists': () => 'Este servidor ya tiene un vivero. Entre con su cuenta.',
  'email-taken': ({ email }) => `Ya hay alguien con la dirección ${email}.`,
  'last-owner': () => 'Un vivero necesita al menos una persona dueña. Nombre antes a otra.',
  'wrong-password': () => 'Esta no es su contraseña actual. Escríbala otra vez.',
  'own-password': () => 'Cambie su propia contraseña en «Usted y este dispositivo».',
  'common-password': () => 'Esta contraseña es fácil de adivinar. Pruebe con cuatro palabras que no tengan relación.',
  'known-name-password': () => 'No use su nombre, su correo ni el nombre del vivero.',
  'second-step-needed': () => 'Escriba los 6 dígitos de su aplicación o un código de recuperación.',
  'wrong-code': () => 'Ese código no sirve. Cada código sirve una sola vez. Escriba el más nuevo.',
  'own-second-step': () => 'Desactive su propio segundo paso en «Usted y este dispositivo».',
  'second-step-changed': () => 'Esto se cambió en otro aparato. Vuelva a cargar la página.',
  'unknown-zone': ({ zone }) => `${zone} no es una zona horaria. Elija una de la lista.`,
} satisfies Partial<ErrorSentences>;
