import { files } from '@rootclock/contracts';
import { FIELD } from '@rootclock/domain';
import { commandPrepared } from '../../../trpc/operation.ts';
import { attach, takePhoto } from '../adding.ts';

export const addPhoto = commandPrepared({
  name: 'addPhoto',
  input: files.addPhoto,
  roles: FIELD,
  before: takePhoto,
  run: attach,
});
