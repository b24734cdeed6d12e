import { APP_ROLE } from '../pool.ts';
import type { Proofs } from './ledger-proofs.ts';

const TENANT_TABLES = `(SELECT c.oid, c.relname::text AS name, c.relrowsecurity AS secured FROM pg_class c
  JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'nursery_id' AND NOT a.attisdropped
  WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace AND c.relname NOT IN ('membership', 'token'))`;

/** Rows that may go: names, alternatives and what a kit takes are edited as a whole, facts are replaced, a reservation is given up. */
const MAY_GO = [
  'plant_name',
  'plant_fact',
  'line_alternative',
  'kit_component',
  'reservation',
  'code_counter',
  'entry_subject',
];

export const commandProofs: Proofs = {
  'command-once': `
    SELECT n.id AS nursery, format('the nursery stands at %s, its %s commands run from %s to %s', n.version, c.many, c.first, c.last) AS what
      FROM nursery n JOIN (SELECT nursery_id, count(*) AS many, min(version) AS first, max(version) AS last FROM command GROUP BY nursery_id) c ON c.nursery_id = n.id
     WHERE c.many <> n.version OR c.first <> 1 OR c.last <> n.version`,
  'entry-has-command': `
    SELECT e.nursery_id AS nursery, format('entry %s (%s) has no command of its number', e.id, e.kind) AS what
      FROM entry e LEFT JOIN command c ON c.nursery_id = e.nursery_id AND c.id = e.id AND c.version = e.version WHERE c.id IS NULL`,
  'nursery-apart': `
    SELECT NULL::uuid AS nursery, format('%s is not under row security', t.name) AS what FROM ${TENANT_TABLES} t
     WHERE NOT t.secured OR NOT EXISTS (SELECT 1 FROM pg_policy p WHERE p.polrelid = t.oid)
    UNION ALL
    SELECT NULL, format('the role ${APP_ROLE} owns %s', c.relname) FROM pg_class c JOIN pg_roles r ON r.oid = c.relowner WHERE r.rolname = '${APP_ROLE}'
    UNION ALL
    SELECT NULL, 'the role ${APP_ROLE} bypasses row security' FROM pg_roles WHERE rolname = '${APP_ROLE}' AND (rolsuper OR rolbypassrls)
    UNION ALL
    SELECT NULL, format('%s.%s refers to another table without naming its nursery', c.conrelid::regclass, c.conname) FROM pg_constraint c
      JOIN ${TENANT_TABLES} t ON t.oid = c.conrelid JOIN ${TENANT_TABLES} o ON o.oid = c.confrelid
     WHERE c.contype = 'f' AND NOT EXISTS (SELECT 1 FROM pg_attribute a WHERE a.attrelid = c.conrelid AND a.attname = 'nursery_id' AND a.attnum = ANY (c.conkey))`,
  'nothing-deleted': `
    SELECT NULL::uuid AS nursery, format('rows of %s can be deleted by the server', t.name) AS what FROM ${TENANT_TABLES} t
     WHERE has_table_privilege('${APP_ROLE}', t.oid, 'DELETE') AND t.name <> ALL (ARRAY['${MAY_GO.join("', '")}'])`,
};
