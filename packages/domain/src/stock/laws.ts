/**
 * The laws that all data of a nursery keeps, each under the name it is reported by. The database holds them while it is written to;
 * `rootclock check` proves them over a whole database; tests of the model, of history and of crashes end with that proof.
 */
export const DATA_LAWS = {
  'ledger-append-only': 'Movements, entries and commands are only ever added.',
  'reversal-mirrors': 'A reversal mirrors a whole entry, at most once, and is never itself reversed.',
  'balance-is-sum': 'The balance of each account is what came in less what went out.',
  'balance-not-negative': 'No account holds fewer than no units, and the outside holds none.',
  'units-enter-and-leave':
    'Units enter only as opening, bought, started or found, and leave only as planted, sold, given, lost or unexplained.',
  'sides-equal': 'Both sides of a movement are equal unless the entry pots or converts.',
  'lot-reserved-within-on-hand': 'No lot is promised beyond what stands of it at places.',
  'batch-reserved-within-yield': 'No batch is promised beyond its cautious yield.',
  'held-lots-promise-nothing': 'A lot that is held serves no order.',
  'lot-receives-lawfully': 'A lot takes units of another only in the entry that made it, or from its batch.',
  'lineage-follows-movements': 'The lineage says what the movements say.',
  'lineage-acyclic': 'No lot descends from itself.',
  'lot-closed-when-empty': 'A lot is closed exactly when nothing of it stands or is staged.',
  'command-once': 'Each command took effect once, under a number of its own, without a gap.',
  'entry-has-command': 'Each entry was made by a command with its id and number.',
  'nursery-apart': "Every tenant table is under row security and the server's role owns nothing.",
  'day-not-in-future': 'Nothing happened after the day on which it was written down.',
  'seed-store-is-sum': 'The grams left of a source are what came in less what went out, and never below nothing.',
  'seed-taken-back-once': 'Seed is taken back whole and once, and with the entry that used it.',
  'blends-acyclic': 'No source is blended of itself.',
  'evidence-follows-entries': 'What is kept of how a batch went is what its entries tell.',
  'files-are-kept':
    'Each photo and paper that is shown lies in the store, whole, and what was blanked is shown by none.',
  'nothing-deleted': 'No tenant table gives rows up without being refused.',
} as const;
export type DataLaw = keyof typeof DATA_LAWS;
