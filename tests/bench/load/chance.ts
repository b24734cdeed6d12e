import { createHash } from 'node:crypto';
import { type Chance, chanceFrom } from '@rootclock/server/demo/random';

/**
 * Chance of a stream of its own, so that a shorter history leaves the living lots as they are. The numbers of all streams come round one
 * circle and may meet, which does no harm; ids must not, and follow from the stream's name and their own number.
 */
export function streamOf(seed: number, stream: string, index = 0): Chance {
  const name = `${seed}/${stream}/${index}`;
  let ids = 0;
  return {
    ...chanceFrom(createHash('md5').update(name).digest().readUInt32LE()),
    id: () => {
      const hex = createHash('md5').update(`${name}/${ids++}`).digest('hex');
      return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`;
    },
  };
}
