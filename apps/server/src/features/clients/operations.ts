import { addBed } from './commands/add-bed.ts';
import { addClient } from './commands/add-client.ts';
import { addSite } from './commands/add-site.ts';
import { editBed } from './commands/edit-bed.ts';
import { editClient } from './commands/edit-client.ts';
import { editSite } from './commands/edit-site.ts';

export const clientsOperations = {
  addClient,
  editClient,
  addSite,
  editSite,
  addBed,
  editBed,
};
