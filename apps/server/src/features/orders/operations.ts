import { addKitLines } from './kits/commands/add-kit-lines.ts';
import { addKit } from './kits/commands/add-kit.ts';
import { editKit } from './kits/commands/edit-kit.ts';
import { retireKit } from './kits/commands/retire-kit.ts';
import { listKits } from './kits/list-kits.ts';
import { addLine } from './lines/commands/add-line.ts';
import { withdrawLine } from './lines/commands/withdraw-line.ts';
import { addOrder } from './orders/commands/add-order.ts';
import { editOrder } from './orders/commands/edit-order.ts';
import { finishOrder } from './orders/commands/finish-order.ts';
import { alternativesFor } from './substitutes/alternatives-for.ts';
import { addSubstitutionRule } from './substitutes/commands/add-substitution-rule.ts';
import { editSubstitutionRule } from './substitutes/commands/edit-substitution-rule.ts';
import { retireSubstitutionRule } from './substitutes/commands/retire-substitution-rule.ts';
import { listSubstitutionRules } from './substitutes/list-substitution-rules.ts';

export const ordersOperations = {
  addOrder,
  editOrder,
  finishOrder,
  addLine,
  withdrawLine,
  addSubstitutionRule,
  editSubstitutionRule,
  retireSubstitutionRule,
  listSubstitutionRules,
  alternativesFor,
  addKit,
  editKit,
  retireKit,
  addKitLines,
  listKits,
};
