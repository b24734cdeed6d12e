import { lotsCount, plants } from './words.ts';

export const sheets = {
  day: 'Day', note: 'Note', fold: 'Note and more', units: 'How many', all: 'All', allHint: (count: number) => `Left empty, all ${count} of them.`,
  fromPlace: 'From which place', toPlace: 'Stand at', container: 'Container', readyOn: 'Expected to be ready', readyHint: 'Left blank, they are not ready until you check the root ball.', cause: 'Why',
  everywhere: (count: number) => `Everywhere (${count})`, noPlaces: 'There is no such place yet. Add it under Places first.', closedPlace: (code: string) => `${code} (closed)`, unitsAt: (code: string, units: number) => `${code} (${units})`,
  undone: 'Taken back. Everything is as it was before.', open: (code: string) => `Open ${code}`,
  noWindow: (code: string) => `${code}: no planting window is left before its limit.`,

  potUpTitle: 'Pot up', potUpSave: 'Pot up', potUpSaved: (count: number, code: string) => `${plants(count)} potted up into ${code}.`,
  keepsClock: (on: string) => `A bigger pot does not move the plant-by day: the limit of ${on} counts from when the roots were confined.`,
  moveTitle: 'Move', moveTo: 'To', moveSave: 'Move', moveSaved: (code: string) => `${code} moved. Its label stays.`,
  loseTitle: 'Lost', loseSave: 'Write off', loseSaved: (count: number, code: string) => `${plants(count)} of ${code} written off.`,
  dormantAsk: 'Dormant, or dead?',
  dormantText: (plant: string, until: string) => `${plant} may only be asleep: the last of them come up by ${until}. Tip one out and look: firm, pale roots are alive.`,
  dormantTextOpen: (plant: string) => `${plant} may only be asleep at this time of year. Tip one out and look: firm, pale roots are alive.`,
  dormantConfirm: 'I looked: they are dead', dormantWait: 'Wait',
  countTitle: 'Count', counted: 'What stands there', countHow: 'How sure is it?', countSave: 'Save the count', countExpected: (count: number) => `Expected: ${count}. A difference is booked as found or unexplained.`,
  countSaved: (count: number, code: string) => `${code}: ${count} counted.`,
  observeTitle: 'What you see', observeKind: 'What', rootResult: 'Turn one out: does the ball hold?', pest: 'Which pest or disease', height: 'Height', thinned: 'Plants taken out',
  circlingHint: 'A bigger pot or the ground: tease circling roots apart, cut taproots do not grow back.', observeSave: 'Save', observeSaved: 'Noted.',
  convertTitle: 'Divide or clump', convertHow: 'What is done', divide: 'Divide: one plant gives several', clump: 'Clump: several plants in one pot', plantsIn: 'Plants taken', potsOut: 'Pots made',
  convertSave: 'Save both counts', convertSaved: (before: number, after: number, code: string) => `${before} became ${after} in ${code}.`,
  knives: 'Clean and disinfect blades between lots; cut away from your hand. Some milky saps hurt skin and eyes: wear gloves.',
  patchTitle: 'Fill gaps', patchFrom: 'From which other lot', patchFromHint: 'Only lots of the same plant and source: what was delivered must stay traceable.', patchUnits: 'Plants put in',
  patchAfter: (count: number) => `The tray then holds ${plants(count)} under a new label; its plant-by day stays that of the oldest.`, patchSave: 'Fill the gaps', patchSaved: (added: number, count: number, code: string) => `${added} put in: ${plants(count)} are ${code} now. Label them.`,
  splitTitle: 'Split off a part', splitSave: 'Split off', splitSaved: (count: number, code: string) => `${plants(count)} are ${code} now. Label them.`,
  sellTitle: 'Sell', giveTitle: 'Give away', party: 'To whom', sellSave: 'Sold', giveSave: 'Given away', leftSaved: (count: number, code: string) => `${plants(count)} of ${code} have left.`,
  promisedWarning: (free: number) => `Only ${free} are free. More may go: promises give way, the last ranked first.`,
  holdTitle: 'Hold', holdReason: 'For what reason', holdHint: 'A hold is on a whole lot. Split a part off to hold only that.', holdSave: 'Hold', holdSaved: (count: number) => `${lotsCount(count)} on hold.`,
  releaseTitle: 'Release', releaseReason: 'Why it may go', releaseHint: 'Whoever asks next year will read this.', releaseSave: 'Release', releaseSaved: (code: string) => `${code} is released.`,
  reIdentifyTitle: 'It is another plant', reIdentifyPlant: 'What it really is', reIdentifyHint: 'Everything that came from this lot is renamed with it. Promises for the old name are freed.',
  reIdentifySave: 'Rename', reIdentifySaved: (count: number) => `${lotsCount(count)} renamed. Labels keep their codes.`, gardensTitle: 'Already planted under the wrong name',
  gardenLine: (client: string, site: string, units: number, on: string) => `${client}${site ? `, ${site}` : ''}: ${plants(units)}, last on ${on}`, unknownGarden: 'without an order', done: 'Done',
  bedTitle: 'Plant in a nursery bed', bed: 'Bed', bedSave: 'Plant in the bed', bedSaved: (count: number, code: string) => `${plants(count)} stand in the ground as ${code}.`,
  liftTitle: 'Lift from the bed', dug: 'Plants dug', potsFilled: 'Pots filled', liftHint: 'More than estimated is fine: the rest is booked as found.', liftSave: 'Lift and pot',
  liftSaved: (count: number, code: string) => `${plants(count)} lifted into ${code}.`, digging: 'Before you dig, know where cables and pipes lie.',
};

export const treat = {
  title: 'Record a treatment', product: 'Product', registrationNo: 'Registration number', rate: 'Rate', applicator: 'Applied by', applicatorHint: 'With the licence number where one is needed.',
  target: 'Against', treatedOn: 'Day', treatedAt: 'Time', reentryHours: 'Re-entry after', hours: 'hours', reentryHint: 'As the label says. The places are closed until then.', save: 'Save the treatment',
  saved: (count: number, closedUntil: string | null) => `Treatment of ${lotsCount(count)} saved.${closedUntil ? ` Closed until ${closedUntil}.` : ''}`,
  held: (codes: string) => `Hosts of larvae, on hold now: ${codes}.`,
};

export const bulk = {
  move: 'Move', lose: 'Lost', treat: 'Treat', hold: 'Hold', observe: 'Observe', merge: 'Merge',
  of: (count: number) => lotsCount(count), wholePlace: 'all that stands here',
  moveTitle: (what: string) => `Move ${what}`, moveSaved: (count: number) => `${plants(count)} moved.`,
  loseTitle: (what: string) => `Lost of ${what}`, each: 'So many of each', percent: 'A share of each', unitsEach: 'Of each lot', percentOf: 'Per cent', loseSaved: (count: number) => `${plants(count)} written off.`,
  mergeTitle: (what: string) => `Merge ${what}`, mergeHint: 'Only lots of one plant, source and container. The earliest days govern the new lot.', mergePlace: 'Bring all to', mergeStay: 'Each stays where it is',
  mergeSave: 'Merge', mergeSaved: (code: string) => `Merged into ${code}. Label them.`,
};
