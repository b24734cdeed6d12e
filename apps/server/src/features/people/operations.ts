import { addPerson } from './commands/add-person.ts';
import { changePerson } from './commands/change-person.ts';
import { editNursery } from './commands/edit-nursery.ts';
import { removeSecondStep } from './commands/remove-second-step.ts';
import { listPeople, listSecondSteps } from './reads.ts';

export const peopleOperations = { listPeople, addPerson, changePerson, editNursery, listSecondSteps, removeSecondStep };
