// The plan of a whole generated history, and its playing in the order of days.
import type pg from 'pg';
import { begin } from './beginning.ts';
import { streamOf } from './chance.ts';
import { Sheets } from './copy.ts';
import { end, LAST_MOVES, stay } from './ending.ts';
import { Family, type FamilyPlan } from './family.ts';
import { firstDay, layGrounds, today } from './grounds.ts';
import { Ledger } from './ledger.ts';
import { Orders } from './orders.ts';
import { FamilyRows } from './rows.ts';

export interface Size {
  /** Lots that stand today; the same ones for each length of the history. */
  liveLots: number;
  closedLots: number;
  /** Movements of the closed lots, about. */
  closedMoves: number;
  /** Movements of each lot, on average. */
  movesEach: number;
  openLines: number;
  seed: number;
}

export interface Loaded {
  rows: Record<string, number>;
  /** The lot with the longest story. */
  longLotId: string;
  lastVersion: number;
}

interface Planned extends Omit<FamilyPlan, 'moves'> {
  /** How much more or less happens to it than to others. */
  bustle: number;
}

/** How many times the movements of other lots the longest story has. */
const LONG_STORY = 15;
const LONG_DAYS = 1200;

function livingFamilies({ liveLots, seed }: Size): Planned[] {
  const long: Planned = {
    chance: streamOf(seed, 'long story'),
    startDay: today - LONG_DAYS,
    endDay: today - 1,
    lots: 1,
    live: true,
    bustle: LONG_STORY,
  };
  const families = [long];
  for (let left = liveLots - 1; left > 0;) {
    const chance = streamOf(seed, 'living', families.length);
    const lots = Math.min(left, chance.whole(1, 4));
    families.push({
      chance,
      startDay: today - chance.whole(60, 640),
      endDay: today - 1,
      lots,
      live: true,
      bustle: 0.5 + chance.share(),
    });
    left -= lots;
  }
  return families;
}

function closedFamilies({ closedLots, seed }: Size): Planned[] {
  const families: Planned[] = [];
  for (let left = closedLots; left > 0;) {
    const chance = streamOf(seed, 'closed', families.length);
    const lots = Math.min(left, chance.whole(1, 4));
    const startDay = chance.whole(firstDay, today - 150);
    families.push({
      chance,
      startDay,
      endDay: Math.min(today - 1, startDay + chance.whole(140, 640)),
      lots,
      live: false,
      bustle: 0.5 + chance.share(),
    });
    left -= lots;
  }
  return families;
}

export async function loadHistory(
  client: pg.Client,
  nurseryId: string,
  people: readonly string[],
  firstVersion: number,
  size: Size,
): Promise<Loaded> {
  const sheets = new Sheets(client);
  const grounds = await layGrounds(client, sheets, nurseryId, streamOf(size.seed, 'grounds'));
  const ledger = new Ledger(sheets, nurseryId, people, firstVersion);
  const orders = new Orders(sheets, grounds);
  const rows = new FamilyRows(sheets, ledger, grounds);
  const items: { plantId: string; containerId: string }[] = [];
  let longLotId = '';
  let closed = { lots: size.closedLots, moves: size.closedMoves };

  const play = (planned: Planned) => {
    // What closed families make more or less than planned is evened out by those after them.
    const each = planned.live ? size.movesEach : closed.moves / closed.lots;
    const family = new Family(ledger, grounds, { ...planned, moves: Math.round(planned.bustle * planned.lots * each) });
    const before = ledger.moves;
    const pottedUp = planned.lots > 1 && planned.chance.share() < 0.3 ? 1 : 0;
    const batch = begin(family, planned.lots - pottedUp);
    family.live(planned.live ? 0 : planned.lots * LAST_MOVES);
    if (!planned.live) end(family, orders);
    rows.write(family, batch, planned.live ? stay(family, orders) : []);
    if (!planned.live) closed = { lots: closed.lots - planned.lots, moves: closed.moves - (ledger.moves - before) };
    else items.push(...family.lots.map(({ containerId }) => ({ plantId: family.plant.id, containerId })));
    if (planned.bustle === LONG_STORY) longLotId = family.lots[0]?.id ?? '';
  };

  const families = [...livingFamilies(size), ...closedFamilies(size)].sort((a, b) => a.startDay - b.startDay);
  for (const planned of families) {
    ledger.flushBefore(planned.startDay);
    play(planned);
    await sheets.sendFull();
  }
  orders.open(streamOf(size.seed, 'open orders'), items, size.openLines);
  ledger.finish();
  grounds.closeCodes();
  await sheets.sendAll();
  return { rows: sheets.counts(), longLotId, lastVersion: ledger.lastVersion };
}
