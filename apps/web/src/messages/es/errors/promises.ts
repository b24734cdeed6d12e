import type { ErrorSentences } from '../../errors.ts';

const SUPPLY_REASONS: Record<string, string> = {
  item: 'otra planta u otro envase', 'not-ready': 'aún no estará listo', 'past-plant-by': 'habrá pasado su fecha límite', held: 'retenido', 'seed-zone': 'de otra zona de semilla',
  'not-wild-type': 'no es tipo silvestre', treated: 'tratado', 'released-by-hand': 'liberado de este renglón',
};

export const promises = {
  'would-shorten': ({ lines, ownerOnly }) =>
    `Esto dejaría cortos a otros: ${lines.map((line) => `${line.orderCode} ${line.scientificName}, ${line.shorterBy} menos`).join('; ')}. ${ownerOnly ? 'Solo un dueño puede decidirlo.' : 'Envíelo otra vez si es lo que quiere.'}`,
  'does-not-serve': ({ supply, reasons }) => `${supply} no sirve para este renglón: ${reasons.map((reason) => SUPPLY_REASONS[reason] ?? reason).join(', ')}.`,
  'nothing-reserved': ({ supply }) => `De ${supply} no hay nada reservado para este renglón.`,
  'pinned-by-others': ({ supply, available }) => (available === 0 ? `Todo ${supply} está atado a otros renglones. Desate algo antes.` : `Anote ${available} o menos: el resto de ${supply} está atado a otros renglones.`),
  'more-than-line-needs': ({ open }) => (open === 0 ? 'Este renglón ya tiene todas sus plantas.' : `Anote ${open} o menos: el renglón no necesita más.`),
} satisfies Partial<ErrorSentences>;
