import type { ErrorSentences } from '../../errors.ts';
import { days } from '../words.ts';

export const potLife = {
  'rule-exists': () => 'Ya hay una regla de esta clase para las mismas plantas. Cambie esa o retírela primero.',
  'rule-retired': () => 'Esta regla fue retirada. Añada una nueva.',
  'window-retired': () => 'Esta época de plantación fue retirada. Añada una nueva.',
  'window-exists': ({ opensMd, closesMd }) =>
    `Ya hay una época del ${days.yearly(opensMd)} al ${days.yearly(closesMd)} para las mismas plantas.`,
} satisfies Partial<ErrorSentences>;
