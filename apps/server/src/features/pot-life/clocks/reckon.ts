import { plantBy, winningRules } from '@rootclock/domain';
import type { CommandContext } from '../../../trpc/operation.ts';
import { type ReckonedClock, storeClocks } from '../../stock/store.ts';
import { type ClockRules, type ClockSubject, loadClockRules, loadClockSubjects } from './store.ts';

/** Rules are read again only when their version moved; the version comes with the nursery's lock, so a stale copy is never used. */
const cachedRules = new Map<string, { version: number; rules: ClockRules }>();

async function rulesOf(context: CommandContext, version: number): Promise<ClockRules> {
  const cached = cachedRules.get(context.nurseryId);
  // A command that changes rules sees its own change: it reads them afresh and leaves the copy to the next one.
  if (context.touched.allClocks) return loadClockRules(context);
  if (cached?.version === version) return cached.rules;
  const rules = await loadClockRules(context);
  cachedRules.set(context.nurseryId, { version, rules });
  return rules;
}

/** Reckons the plant-by day and the binding rule of what a command touched, and closes lots of which nothing is left. */
export async function reckonClocks(context: CommandContext, rulesVersion: number): Promise<void> {
  const { touched, today } = context;
  if (!touched.allClocks && touched.clocks.size === 0 && touched.batches.size === 0) return;
  const rules = await rulesOf(context, rulesVersion);
  const subjects = await loadClockSubjects(context, { lots: [...touched.clocks], batches: [...touched.batches] });
  const others = touched.allClocks
    ? (await loadClockSubjects(context, 'all-open')).filter(
        (s) => !touched.clocks.has(s.id) && !touched.batches.has(s.id),
      )
    : [];
  const changed = [...subjects, ...others]
    .map((subject) => ({ subject, clock: reckon(subject, rules, today) }))
    .filter(({ subject, clock }) => differs(subject, clock));
  if (changed.length > 0) touched.features.add('pot-life');
  // With another plant-by day what only became smaller may serve whom it did not before.
  for (const { subject } of changed) if (touched.clocks.has(subject.id)) touched.lot(subject.id);
  await storeClocks(
    context,
    'lot',
    changed.filter(({ subject }) => subject.kind === 'lot').map(({ clock }) => clock),
  );
  await storeClocks(
    context,
    'batch',
    changed.filter(({ subject }) => subject.kind === 'batch').map(({ clock }) => clock),
  );
}

/** What the rules make of one lot or batch; nothing is written. */
export function reckon(subject: ClockSubject, { rules, windows, freezeMd }: ClockRules, today: string): ReckonedClock {
  const result = plantBy({
    confinedOn: subject.confinedOn,
    containerOn: subject.containerOn,
    readyOn: subject.readyOn,
    rules: winningRules(rules, {
      lotId: subject.kind === 'lot' ? subject.id : null,
      plantId: subject.plantId,
      containerId: subject.containerId,
      genus: subject.genus,
      rootHabit: subject.rootHabit,
    }),
    windows,
    containerMl: subject.containerMl,
    region: null,
    freezeMd,
    dormantMonths: subject.dormantMonths,
    coldSheltered: subject.coldSheltered,
  });
  const closedOn = subject.kind === 'batch' ? subject.closedOn : subject.isLive ? null : (subject.closedOn ?? today);
  return { id: subject.id, closedOn, result };
}

function differs({ stored, closedOn }: ClockSubject, { closedOn: newClosedOn, result }: ReckonedClock): boolean {
  return (
    closedOn !== newClosedOn ||
    stored.plantByOn !== result.plantByOn ||
    stored.state !== result.state ||
    stored.limitOn !== result.limitOn ||
    stored.ruleId !== result.ruleId ||
    stored.windowId !== (result.window?.id ?? null) ||
    stored.nextOpensOn !== result.nextOpensOn
  );
}
