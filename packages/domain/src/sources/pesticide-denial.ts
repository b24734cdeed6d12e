/** What counts as a plain denial, whole and in the nursery's two languages. Anything longer may take back what it seems to say, so it is for a person to read. */
const PLAIN_DENIALS: ReadonlySet<string> = new Set([
  'none',
  'no',
  'none used',
  'none applied',
  'nothing applied',
  'nothing used',
  'untreated',
  'not treated',
  'never treated',
  'no treatment',
  'no treatments',
  'no pesticide',
  'no pesticides',
  'no pesticide used',
  'no pesticides used',
  'no pesticide applied',
  'no pesticides applied',
  'no pesticides were used',
  'no pesticides were applied',
  'pesticide-free',
  'pesticide free',
  'ninguno',
  'ninguna',
  'ningún plaguicida',
  'ningún pesticida',
  'nada aplicado',
  'sin tratar',
  'sin tratamiento',
  'sin tratamientos',
  'no tratado',
  'no tratada',
  'no tratados',
  'no tratadas',
  'sin plaguicida',
  'sin plaguicidas',
  'sin pesticida',
  'sin pesticidas',
  'no se usaron plaguicidas',
  'no se usaron pesticidas',
  'no se aplicaron plaguicidas',
  'no se aplicaron pesticidas',
  'libre de plaguicidas',
  'libre de pesticidas',
]);

/**
 * Whether a vendor's statement plainly denies that pesticides were used: the whole of it is one of a short list, but for case, spaces around and between
 * its words, and a full stop. "No systemic" denies one kind only and "no pesticide records kept" denies the records, so neither counts. Null is no statement.
 */
export const deniesPesticides = (statement: string | null): boolean =>
  PLAIN_DENIALS.has(
    (statement ?? '')
      .normalize('NFC')
      .trim()
      .replace(/\s*\.$/, '')
      .replaceAll(/\s+/g, ' ')
      .toLowerCase(),
  );
