import type { kits as english } from '../../en/orders/kits.ts';
import { days, plural } from '../words.ts';

export const kits: typeof english = {
  tab: 'Juegos',
  title: 'Juegos de plantas',
  lead: 'Un juego se pide como una sola cosa. El pedido lleva un renglón por cada una de sus plantas.',
  nothingYet: 'Aún no hay juegos',
  nothingYetText: 'Junte lo que los clientes suelen pedir a la vez. Después se agrega al pedido de una vez.',
  add: 'Juego nuevo',
  addTitle: 'Juego nuevo',
  editTitle: 'Cambiar el juego',
  change: (name) => `Cambiar ${name}`,
  name: 'Nombre',
  components: 'Qué lleva un juego',
  component: (number) => `Planta ${number}`,
  addComponent: 'Otra planta',
  removeComponent: (number) => `Quitar la planta ${number}`,
  units: 'Plantas por juego',
  save: 'Guardar el juego',
  saved: (name) => `${name} quedó guardado.`,
  retire: 'Retirar',
  retired: (name) => `${name} ya no se ofrece. Los pedidos conservan lo que llevan de él.`,
  takes: (units, container) => `${units} en ${container}`,
  partOf: (name, units) => `parte de ${units} × ${name}`,

  addToOrder: 'Agregar un juego',
  kit: 'Juego',
  howMany: 'Cuántos juegos',
  choose: 'Agregar el juego',
  none: 'Aún no se ofrece ningún juego. Prepare uno en Juegos.',
  added: (name, units) => `${units} × ${name} agregado.`,
  checking: 'Mirando cuántos se pueden prometer',
  most: (count, on) =>
    plural(count, {
      zero: `No se puede prometer ningún juego entero para el ${days.long(on)}.`,
      one: `Se puede prometer # juego entero para el ${days.long(on)}.`,
      other: `Se pueden prometer hasta # juegos enteros para el ${days.long(on)}.`,
    }),
  short: (count, asked, on) =>
    plural(count, {
      zero: `Ninguno de ${asked} se puede prometer entero para el ${days.long(on)}.`,
      one: `# de ${asked} se puede prometer entero para el ${days.long(on)}.`,
      other: `# de ${asked} se pueden prometer enteros para el ${days.long(on)}.`,
    }),
  free: (promisable, each) => `se pueden prometer ${promisable}, un juego lleva ${each}`,
};
