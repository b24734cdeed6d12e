import type { potLife } from '@rootclock/contracts';
import type * as z from 'zod/mini';
import { found } from '../../../refusal.ts';
import type { ClockRules } from '../clocks-store.ts';
import { draftOf, editedRule } from './draft.ts';
import { windowOf } from './windows/draft.ts';

export type RulesChange = z.output<typeof potLife.previewChange>['change'];

/** The rules as they would be after a change. Refuses an id that is not among them, throws InputError for terms that make no rule. */
export function changedRules({ rules, windows, freezeMd }: ClockRules, change: RulesChange): ClockRules {
  switch (change.command) {
    case 'addRule':
      return { rules: [...rules, draftOf(change.body)], windows, freezeMd };
    case 'editRule': {
      const before = found(
        rules.find(({ id }) => id === change.body.ruleId),
        'rule',
        'ruleId',
      );
      return {
        rules: rules.map((rule) => (rule === before ? editedRule(rule, change.body) : rule)),
        windows,
        freezeMd,
      };
    }
    case 'retireRule': {
      const before = found(
        rules.find(({ id }) => id === change.body.ruleId),
        'rule',
        'ruleId',
      );
      return { rules: rules.filter((rule) => rule !== before), windows, freezeMd };
    }
    case 'addWindow':
      return { rules, windows: [...windows, windowOf(change.body)], freezeMd };
    case 'editWindow': {
      const before = found(
        windows.find(({ id }) => id === change.body.windowId),
        'window',
        'windowId',
      );
      return {
        rules,
        windows: windows.map((window) => (window === before ? windowOf(change.body) : window)),
        freezeMd,
      };
    }
    case 'retireWindow': {
      const before = found(
        windows.find(({ id }) => id === change.body.windowId),
        'window',
        'windowId',
      );
      return { rules, windows: windows.filter((window) => window !== before), freezeMd };
    }
    case 'setFreezeDay':
      return { rules, windows, freezeMd: change.body.freezeMd };
  }
}
