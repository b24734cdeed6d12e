import { beginBatchStage } from './batches/commands/begin-batch-stage.ts';
import { closeBatch } from './batches/commands/close-batch.ts';
import { correctBatchUnits } from './batches/commands/correct-batch-units.ts';
import { countBatch } from './batches/commands/count-batch.ts';
import { keepForSecondWinter } from './batches/commands/keep-for-second-winter.ts';
import { loseFromBatch } from './batches/commands/lose-from-batch.ts';
import { moveBatch } from './batches/commands/move-batch.ts';
import { potBatch } from './batches/commands/pot-batch.ts';
import { setBatchForecast } from './batches/commands/set-batch-forecast.ts';
import { startBatch } from './batches/commands/start-batch.ts';
import { thinBatch } from './batches/commands/thin-batch.ts';
import { suggestForecast } from './batches/forecast/suggest-forecast.ts';
import { readBatch } from './batches/page/read-batch.ts';
import { listBatches } from './batches/reads.ts';
import { readStartChoices } from './batches/starting/read-start-choices.ts';
import { learningOperations } from './learning/operations.ts';
import { addProtocol } from './protocols/commands/add-protocol.ts';
import { loadReferenceProtocols } from './protocols/commands/load-reference-protocols.ts';
import { restoreProtocol } from './protocols/commands/restore-protocol.ts';
import { retireProtocol } from './protocols/commands/retire-protocol.ts';
import { reviseProtocol } from './protocols/commands/revise-protocol.ts';
import { readProtocol } from './protocols/page/read-protocol.ts';
import { listProtocols } from './protocols/reads.ts';

export const propagationOperations = {
  startBatch,
  beginBatchStage,
  countBatch,
  thinBatch,
  loseFromBatch,
  potBatch,
  moveBatch,
  setBatchForecast,
  correctBatchUnits,
  closeBatch,
  keepForSecondWinter,
  listBatches,
  readBatch,
  readStartChoices,
  suggestForecast,
  addProtocol,
  reviseProtocol,
  retireProtocol,
  restoreProtocol,
  loadReferenceProtocols,
  listProtocols,
  readProtocol,
  ...learningOperations,
};
