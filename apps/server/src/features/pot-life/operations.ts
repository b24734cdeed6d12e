import { readBoard } from './board-reads.ts';
import { addRule } from './rules/commands/add-rule.ts';
import { editRule } from './rules/commands/edit-rule.ts';
import { retireRule } from './rules/commands/retire-rule.ts';
import { previewChange } from './rules/preview-reads.ts';
import { listRules } from './rules/reads.ts';
import { addWindow } from './rules/windows/commands/add-window.ts';
import { editWindow } from './rules/windows/commands/edit-window.ts';
import { retireWindow } from './rules/windows/commands/retire-window.ts';
import { setFreezeDay } from './rules/windows/commands/set-freeze-day.ts';
import { listWindows } from './rules/windows/reads.ts';

export const potLifeOperations = {
  readBoard,
  addRule,
  editRule,
  retireRule,
  listRules,
  addWindow,
  editWindow,
  retireWindow,
  listWindows,
  setFreezeDay,
  previewChange,
};
