import { addSource } from './commands/add-source.ts';
import { editSource } from './commands/edit-source.ts';
import { restoreSource } from './commands/restore-source.ts';
import { retireSource } from './commands/retire-source.ts';
import { listSources } from './reads.ts';
import { readSource } from './trace/reads.ts';

export const sourcesOperations = { addSource, editSource, listSources, readSource, restoreSource, retireSource };
