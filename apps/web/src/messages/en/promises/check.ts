import { days, plural } from '../words.ts';

/** Whether what is being typed can be promised. */
export const check = {
  checking: 'Looking what can be promised',
  /** Before anybody said how many. */
  most: (count: number, on: string) =>
    plural(count, {
      zero: `None can be promised for ${days.long(on)}.`,
      one: `# can be promised for ${days.long(on)}.`,
      other: `Up to # can be promised for ${days.long(on)}.`,
    }),
  all: (count: number, on: string) =>
    plural(count, {
      one: `It can be promised for ${days.long(on)}.`,
      other: `All # can be promised for ${days.long(on)}.`,
    }),
  some: (count: number, asked: number, on: string) =>
    plural(count, {
      zero: `None of ${asked} can be promised for ${days.long(on)}: all would be short.`,
      one: `# of ${asked} can be promised for ${days.long(on)}; ${asked - count} would be short.`,
      other: `# of ${asked} can be promised for ${days.long(on)}; ${asked - count} would be short.`,
    }),
  wholeTrays: (cells: number, below: number | null, above: number) =>
    `${cells} cells a tray: enter ${below === null ? above : `${below} or ${above}`}.`,
  from: (list: readonly { code: string; units: number }[]) =>
    `From ${list.map(({ code, units }) => `${code} (${units})`).join(', ')}.`,
  why: 'What stands in the way',
  whatElse: 'What else would do',
  firstOn: (asked: number, on: string) => `All ${asked} from ${days.long(on)} on`,
  lastBeforeOn: (asked: number, on: string) => `All ${asked} until ${days.long(on)}`,
  moveTo: (on: string) => `Move the day to ${days.long(on)}`,
  never: 'On no later day do the plants that stand or grow here suffice for all of it.',
  instead: (units: number, container: string) => `${units} in ${container}`,
  accept: 'Accept too',
  acceptToo: (plant: string, container: string) => `Accept too: ${plant} in ${container}`,
};
