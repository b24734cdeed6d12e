/** Columns that no person types: the database or a command reckons them, so nothing that somebody wrote is lost when they change. A star is all of a table. */
export const NOT_TYPED: Record<string, string> = {
  'nursery.version': 'counts commands',
  'nursery.rules_version': 'counts changes of what clocks reason with',
  'account.*': 'balances follow from movements',
  'seed_store.*': 'grams follow from movements of seed',
  'code_counter.*': 'running numbers',
  'reservation.*': 'the plan is made anew from orders and stock; pins add to it or take from it under the lock',
  'lot.*': 'a lot is what its entries made of it, and these stay in its history',
  'batch.stage_kind': 'follows from entries', 'batch.stage_position': 'follows from entries', 'batch.stage_begun_on': 'follows from entries',
  'batch.stage_due_on': 'follows from entries', 'batch.stage_late_on': 'follows from entries',
  'batch.emerged_on': 'follows from counts', 'batch.emerged_units': 'follows from counts',
  'batch.limit_on': 'a clock', 'batch.next_opens_on': 'a clock', 'batch.plant_by_on': 'a clock', 'batch.plant_by_state': 'a clock', 'batch.rule_id': 'a clock', 'batch.window_id': 'a clock',
  'line_loss.settled_on': 'once only', 'line_loss.settled_how': 'once only', 'line_loss.settled_command_id': 'once only',
  'garden_order.pull_issued_on': 'the day of the last list, which is not typed',
  'place.edition': 'raised beside the editing commands', 'source.edition': 'raised beside the editing commands',
};

const MARK = 'sets or lifts a mark and leaves all that was typed; who edits the row meanwhile is told, or both hold';
const ENTRY = 'is an entry of the ledger: the one before stays in the history under its person, and either can be taken back';

/** Commands that change a row in place without naming its edition, or whose name sounds so, each with why nothing is overwritten unseen. */
export const NO_EDITION_NEEDED: Record<string, string> = {
  'plants.retirePlant': MARK, 'plants.restorePlant': MARK, 'plants.retireContainer': MARK, 'plants.restoreContainer': MARK,
  'sources.retireSource': MARK, 'sources.restoreSource': MARK, 'stock.retirePlace': MARK, 'stock.restorePlace': MARK,
  'potLife.retireRule': MARK, 'potLife.retireWindow': MARK, 'propagation.retireProtocol': MARK, 'propagation.restoreProtocol': MARK,
  'gardens.retireSubstitutionRule': MARK, 'gardens.retireKit': MARK, 'gardens.withdrawLine': MARK, 'planning.withdrawExpectedDemand': MARK,
  'sources.withdrawViabilityTest': MARK,
  'gardens.cancelOrder': MARK, 'gardens.finishOrder': MARK,
  'plants.removePlantName': 'takes off the one name that it was shown, which is never changed while it stands',
  'gardens.blankClient': 'is meant to leave nothing of what anybody wrote; edits of what was blanked are refused, and its orders rise in edition, so that no older edit brings a note back',
  'promises.setLossAside': 'happens once; the second is refused',
  'sources.receiveSeed': 'adds to the grams, so that two of them add up', 'sources.takeBackSeed': 'takes off what its own receipt had added',
  'stock.closePlace': 'only ever lengthens a closing, is an entry with its reason, and raises the edition that opening names',
  'stock.treatLots': 'closes places by an entry, as closing does', 'stock.treatPlace': 'closes places by an entry, as closing does',
  'stock.releaseLot': 'ends a hold once; the second is refused', 'stock.reverseEntry': 'undoes by rules of its own and once only',
  'stock.reIdentifySource': ENTRY,
  'propagation.setBatchForecast': ENTRY, 'propagation.closeBatch': ENTRY, 'propagation.keepForSecondWinter': ENTRY, 'propagation.correctBatchUnits': ENTRY,
  'propagation.reviseProtocol': 'writes a new version that names the one it was made from, is refused where that is no longer the last, and leaves the old one as it was',
};
