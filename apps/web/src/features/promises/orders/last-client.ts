/** The client of the last order, remembered on this device by id alone. */
import { onDevice } from '../../../lib/remember.ts';

const KEY = 'gardens.client';

export function lastClientId(): string | null {
  const kept = onDevice.read(KEY);
  return typeof kept === 'string' ? kept : null;
}

export const keepLastClient = (clientId: string): void => onDevice.keep(KEY, clientId);
