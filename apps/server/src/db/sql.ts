export { default as sql, join, raw, type Sql } from 'sql-template-tag';
