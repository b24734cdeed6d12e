import { describe, expect, it } from 'vitest';
import { deniesPesticides } from './pesticide-denial.ts';

const DENIED = [
  'none', 'None', ' NONE ', 'none.', 'no', 'No', 'untreated', 'Untreated.', 'UNTREATED', 'not treated', 'Never treated', 'no treatment', 'No treatments', 'no pesticide', 'no pesticides',
  'No  pesticides', 'No pesticides used', 'no pesticides used.', 'No pesticides applied', 'no pesticides were used', 'Pesticide-free', 'pesticide free', 'None used', 'none applied',
  'Ninguno', 'ninguna', 'sin tratar', 'Sin tratamiento', 'no tratado', 'No tratadas', 'sin plaguicidas', 'Sin pesticidas.', 'No se usaron plaguicidas', 'no se aplicaron pesticidas', 'NINGÚN PLAGUICIDA',
  'ningu\u0301n pesticida', 'libre de plaguicidas',
];

const UNKNOWN = [
  null, '', '   ', '.', '-', 'n/a', '?', 'unknown', 'not stated', 'not known', 'no statement', 'no answer', 'no idea', 'no records', 'no pesticide records kept', 'No pesticide records', 'No pesticide statement',
  'no systemic', 'No systemic', 'No systemics', 'no systemic insecticide used, stated in writing', 'no systemic insecticides', 'no neonicotinoids', 'no insecticides', 'no treatment records',
  'no treatment since March', 'no pesticides since potting', 'no pesticides except soap', 'No pesticides used on foliage', 'none since 2025', 'none of our plants are free of pesticides', 'none known',
  'untreated since sowing', 'Untreated seed, plugs drenched', 'untreated?', 'not treated this year', 'not treated as far as we know', 'nonetheless treated', 'treated', 'imidacloprid drench in April',
  'yes', 'no, but ask the grower', 'pesticide-free since June', 'sin declaración', 'sin registro de plaguicidas', 'sin datos', 'sin sistémicos', 'sin tratar desde marzo', 'no tratado este año', 'no se sabe',
  'ninguna declaración', 'tratado', 'no hay registros',
];

describe('a plain denial of pesticides', () => {
  it.each(DENIED.map((statement) => [statement]))('is %j', (statement) => {
    expect(deniesPesticides(statement)).toBe(true);
  });

  it.each(UNKNOWN.map((statement) => [statement]))('is not %j', (statement) => {
    expect(deniesPesticides(statement)).toBe(false);
  });
});
