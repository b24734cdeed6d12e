import { addPerson } from './commands/add-person.ts';
import { changePerson } from './commands/change-person.ts';
import { editNursery } from './commands/edit-nursery.ts';
import { listPeople } from './reads.ts';

export const peopleOperations = { listPeople, addPerson, changePerson, editNursery };
