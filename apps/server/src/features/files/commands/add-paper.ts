import { files } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { commandPrepared } from '../../../trpc/operation.ts';
import { attach, takePaper } from '../adding.ts';

export const addPaper = commandPrepared({
  name: 'addPaper',
  input: files.addPaper,
  roles: FIELD,
  before: takePaper,
  run: attach,
});
