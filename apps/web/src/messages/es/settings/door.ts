import type { door as english } from '../../en/settings/door.ts';

export const door: typeof english = {
  sessions: {
    title: 'Dónde tiene la sesión abierta',
    lead: '¿No reconoce alguno? Ciérrelo y luego cambie su contraseña.',
    device: (browser, system) => (browser && system ? `${browser} en ${system}` : (browser ?? system ?? 'Aparato desconocido')),
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
};
