import { convertLot } from './changing/commands/convert-lot.ts';
import { liftFromBed } from './changing/commands/lift-from-bed.ts';
import { mergeLots } from './changing/commands/merge-lots.ts';
import { plantInBed } from './changing/commands/plant-in-bed.ts';
import { potUpLot } from './changing/commands/pot-up-lot.ts';
import { reIdentifyLot } from './changing/commands/re-identify-lot.ts';
import { reIdentifySource } from './changing/commands/re-identify-source.ts';
import { splitLot } from './changing/commands/split-lot.ts';
import { countLot } from './commands/count-lot.ts';
import { holdMany } from './commands/hold-many.ts';
import { moveLot } from './commands/move-lot.ts';
import { moveMany } from './commands/move-many.ts';
import { observeMany } from './commands/observe-many.ts';
import { releaseLot } from './commands/release-lot.ts';
import { giveFromLot } from './leaving/commands/give-from-lot.ts';
import { loseFromLot } from './leaving/commands/lose-from-lot.ts';
import { loseMany } from './leaving/commands/lose-many.ts';
import { sellFromLot } from './leaving/commands/sell-from-lot.ts';
import { readLotEntries } from './story/read-lot-entries.ts';
import { readLot } from './story/read-lot.ts';

export const lotOperations = {
  convertLot,
  countLot,
  giveFromLot,
  holdMany,
  liftFromBed,
  loseFromLot,
  loseMany,
  mergeLots,
  moveLot,
  moveMany,
  observeMany,
  plantInBed,
  potUpLot,
  readLot,
  readLotEntries,
  reIdentifyLot,
  reIdentifySource,
  releaseLot,
  sellFromLot,
  splitLot,
};
