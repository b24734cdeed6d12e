import type { ErrorSentences } from '../../errors.ts';

export const orders = {
  'order-not-open': ({ order, state }) =>
    state === 'done'
      ? `${order} is finished. Nothing of it can be changed any more.`
      : `${order} was cancelled. Nothing of it can be changed any more.`,
  'line-withdrawn': ({ plant }) => `The line of ${plant} was withdrawn. Add a new line instead.`,
  'site-needed': () => 'Choose the site: an installation needs to know where the plants go.',
  'site-of-other-client': ({ site }) => `${site} belongs to another client. Choose a site of this one.`,
  'bed-of-other-site': ({ bed }) => `${bed} lies at another site. Choose a bed of this one.`,
  'alternative-twice': ({ plant }) => `${plant} in this container stands here twice. Name it once.`,
  'whole-trays-only': ({ cells, below, above }) =>
    `${cells} cells a tray: enter ${below === null ? above : `${below} or ${above}`}.`,
  'other-trays': ({ container, cells, asked }) =>
    `${container} ${cells === null ? 'is no plug tray' : `has ${cells} cells`}, and this line ${asked === null ? 'takes plants by the piece' : `takes trays of ${asked}`}. Add a line of its own for it.`,
  'kit-name-taken': ({ name }) => `Another kit is called ${name}. Choose another name.`,
  'kit-retired': ({ kit }) => `The kit ${kit} is no longer offered. Choose another one.`,
  'component-twice': ({ plant }) =>
    `${plant} in this container stands in the kit twice. Name it once, with all its plants.`,
  'kit-changed': ({ kit }) => `The kit ${kit} was changed meanwhile. Look at it and add it again.`,
  'not-of-kit': ({ kit, units }) =>
    units === null
      ? `The kit ${kit} no longer has this plant in this container. Remove the line and add the kit again.`
      : `The kit ${kit} takes ${units} of it now. Remove the line and add the kit again.`,
  'not-native-here': ({ plant, region }) =>
    `${plant} is not known to be native to ${region}, and this order takes only natives. Choose another plant, or let the order take others too.`,
  'natives-need-region': ({ site }) =>
    site === null
      ? 'Choose a site: only its region can say what is native.'
      : `${site} has no region yet. Set it on the page of the site, then nothing but its natives can be asked for.`,
  'wrong-order-kind': ({ order, kind }) =>
    kind === 'installation'
      ? `${order} is an installation: its plants are planted, not handed over.`
      : `${order} is no installation: its plants are handed over, not planted.`,
} satisfies Partial<ErrorSentences>;
