export { default as sql, empty, join, raw, type Sql } from 'sql-template-tag';
