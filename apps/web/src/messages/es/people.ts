import type { people as en } from '../en/people.ts';

export const people: typeof en = {
  signInTitle: 'Entrar',
  signInLead: 'Qué hay en cada maceta, hasta cuándo y para quién.',
  email: 'Correo electrónico',
  password: 'Contraseña',
  code: 'Código de su aplicación o de recuperación',
  signIn: 'Entrar',
  demoTitle: 'Este es un vivero de muestra',
  demoLead: 'Todo en él es inventado. Elija quién quiere ser:',
  demoEnter: (name, role) => `Entrar como ${name}, ${role}`,
  firstTitle: 'Comience su vivero',
  firstLead: 'Usted es la primera persona aquí. Quien comienza el vivero es su dueño y puede invitar a los demás.',
  nursery: 'El vivero',
  nurseryName: 'Nombre del vivero',
  zone: 'Zona horaria',
  zoneHint: 'Los días comienzan y terminan según este reloj.',
  you: 'Usted',
  name: 'Su nombre',
  passwordHint: 'Al menos 10 caracteres. Unas cuantas palabras seguidas sirven bien.',
  begin: 'Comenzar',
};
