import { raised } from '../../../../db/editions.ts';
import { setInNursery } from '../../../../db/nursery-row.ts';
import { sql } from '../../../../db/sql.ts';
import type { CommandContext } from '../../../../trpc/operation.ts';
import type { NewRule } from './rows.ts';

/** Adds rules. One that is there already, retired ones included, or whose reach has a rule of the nursery's own is left out. */
export async function insertRules({ tx, nurseryId }: CommandContext, rules: readonly NewRule[]): Promise<number> {
  return tx.run`
    INSERT INTO pot_life_rule (nursery_id, id, basis, span, container_id, genus, root_habit, carry_max_days, carry_grace_days, standing, source, note)
    SELECT ${nurseryId}::uuid, r.id, r.basis, r.span, r."containerId", r.genus, r."rootHabit", r."carryMaxDays", r."carryGraceDays", r.standing, r.source, r.note
      FROM jsonb_to_recordset(${JSON.stringify(rules)}::jsonb) AS r (id uuid, basis text, span text, "containerId" uuid, genus text, "rootHabit" text, "carryMaxDays" int,
           "carryGraceDays" int, standing text, source text, note text)
     WHERE NOT EXISTS (SELECT 1 FROM pot_life_rule o WHERE o.nursery_id = ${nurseryId}::uuid AND o.retired_at IS NULL AND o.lot_id IS NULL AND o.plant_id IS NULL AND o.basis = r.basis
             AND lower(o.genus) IS NOT DISTINCT FROM lower(r.genus) AND o.root_habit IS NOT DISTINCT FROM r."rootHabit" AND o.container_id IS NOT DISTINCT FROM r."containerId")
    ON CONFLICT DO NOTHING`;
}

interface NewWindow {
  id: string;
  opensMd: string;
  closesMd: string;
  maxContainerMl: number | null;
  region: string | null;
  standing: string;
  source: string | null;
  note: string;
}

export async function insertWindows({ tx, nurseryId }: CommandContext, windows: readonly NewWindow[]): Promise<number> {
  return tx.run`
    INSERT INTO planting_window (nursery_id, id, opens_md, closes_md, max_container_ml, region, standing, source, note)
    SELECT ${nurseryId}::uuid, w.id, w."opensMd", w."closesMd", w."maxContainerMl", w.region, w.standing, w.source, w.note
      FROM jsonb_to_recordset(${JSON.stringify(windows)}::jsonb) AS w (id uuid, "opensMd" text, "closesMd" text, "maxContainerMl" int, region text, standing text, source text, note text)
    ON CONFLICT DO NOTHING`;
}

/** The settings a nursery begins with; one in which anything was set already keeps its own. */
export async function beginSettings(
  context: CommandContext,
  settings: { freezeMd: string; freezeStanding: string; noticeDays: number },
): Promise<void> {
  await setInNursery(
    context,
    sql`freeze_md = ${settings.freezeMd}, freeze_standing = ${settings.freezeStanding}, notice_days = ${settings.noticeDays}, ${raised(context)}`,
    sql`rules_version = 0`,
  );
}
