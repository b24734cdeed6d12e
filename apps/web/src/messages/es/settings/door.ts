import type { door as english } from '../../en/settings/door.ts';
import { plural } from '../words.ts';

export const door: typeof english = {
  sessions: {
    title: 'Dónde tiene la sesión abierta',
    lead: '¿No reconoce alguno? Ciérrelo y luego cambie su contraseña.',
    device: (browser, system) =>
      browser && system ? `${browser} en ${system}` : (browser ?? system ?? 'Aparato desconocido'),
    here: 'este aparato',
    since: (at) => `Entró el ${at}`,
    seen: (at) => `Último uso: ${at}`,
    end: 'Cerrar',
    endNamed: (device) => `Cerrar ${device}`,
    endOthers: 'Cerrar las demás',
    ended: 'Ese aparato ya no tiene la sesión abierta.',
    othersEnded: 'Sus demás sesiones están cerradas.',
    only: 'No tiene la sesión abierta en ningún otro lugar.',
  },
  second: {
    title: 'Segundo paso',
    lead: 'Después de la contraseña pedimos un código de una aplicación en su teléfono. Una contraseña robada no basta.',
    on: (at) => `Activado desde el ${at}.`,
    codesLeft: (count) =>
      plural(count, {
        zero: 'No le quedan códigos de recuperación. Desactívelo y actívelo de nuevo para tener otros.',
        one: 'Le queda # código de recuperación.',
        other: 'Le quedan # códigos de recuperación.',
      }),
    setUp: 'Activarlo',
    setUpTitle: 'Activar un segundo paso',
    password: 'Su contraseña',
    next: 'Siguiente',
    scan: 'Escanee esto con una aplicación de autenticación.',
    picture: 'Código cuadrado con su clave para la aplicación',
    key: 'O escriba esta clave en la aplicación',
    code: 'Código de 6 dígitos de la aplicación',
    turnOn: 'Activar',
    codesTitle: 'Guarde estos códigos de recuperación',
    codesLead: 'Cada código sirve una vez, si pierde el teléfono. Anótelos. No podemos volver a mostrarlos.',
    copy: 'Copiar los códigos',
    copied: 'Copiados',
    copyFailed: 'No se pudieron copiar los códigos. Anótelos.',
    done: 'Ya los guardé',
    turnOff: 'Desactivarlo',
    turnOffTitle: 'Desactivar el segundo paso',
    anyCode: 'Código de la aplicación o de recuperación',
    isOff: 'El segundo paso está desactivado.',
    ofPerson: 'Tiene un segundo paso.',
    remove: 'Quitar el segundo paso',
    removed: (name) => `${name} entra ahora solo con la contraseña.`,
  },
};
