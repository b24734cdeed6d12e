import { days, plural } from '../words.ts';

/** Kits: several plants that are asked for as one. */
export const kits = {
  tab: 'Kits',
  title: 'Kits',
  lead: 'A kit is asked for as one thing. An order takes a line for each of its plants.',
  nothingYet: 'No kits yet',
  nothingYetText: 'Put together what clients often ask for at once. It is then added to an order in one go.',
  add: 'New kit',
  addTitle: 'New kit',
  editTitle: 'Change the kit',
  change: (name: string) => `Change ${name}`,
  name: 'Name',
  components: 'What one kit takes',
  component: (number: number) => `Plant ${number}`,
  addComponent: 'Another plant',
  removeComponent: (number: number) => `Remove plant ${number}`,
  units: 'Plants in a kit',
  save: 'Save the kit',
  saved: (name: string) => `${name} is saved.`,
  retire: 'Retire',
  retired: (name: string) => `${name} is offered no more. Orders keep what they have of it.`,
  takes: (units: number, container: string) => `${units} in ${container}`,
  partOf: (name: string, units: number) => `part of ${units} × ${name}`,

  addToOrder: 'Add a kit',
  kit: 'Kit',
  howMany: 'How many kits',
  choose: 'Add the kit',
  none: 'No kits are offered yet. Put one together under Kits.',
  added: (name: string, units: number) => `${units} × ${name} added.`,
  checking: 'Looking how many can be promised',
  most: (count: number, on: string) =>
    plural(count, {
      zero: `No whole kit can be promised for ${days.long(on)}.`,
      one: `# whole kit can be promised for ${days.long(on)}.`,
      other: `Up to # whole kits can be promised for ${days.long(on)}.`,
    }),
  short: (count: number, asked: number, on: string) =>
    plural(count, {
      zero: `None of ${asked} can be promised whole for ${days.long(on)}.`,
      one: `# of ${asked} can be promised whole for ${days.long(on)}.`,
      other: `# of ${asked} can be promised whole for ${days.long(on)}.`,
    }),
  free: (promisable: number, each: number) => `${promisable} can be promised, a kit takes ${each}`,
};
