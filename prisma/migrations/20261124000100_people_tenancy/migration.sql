-- The tenant, the people who work in it, and the one table of tokens.
-- person, membership and token stand outside row security: they are reached only through the security-definer functions below.

CREATE TABLE nursery (
  id uuid PRIMARY KEY,
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  zone text NOT NULL,
  region text,
  units text NOT NULL DEFAULT 'us' CHECK (units IN ('metric', 'us')),
  currency text NOT NULL DEFAULT 'USD' CHECK (currency ~ '^[A-Z]{3}$'),
  demo boolean NOT NULL DEFAULT false,
  -- Grows by one with every command: the write lock, the live signal and the order of entries.
  version bigint NOT NULL DEFAULT 0,
  -- Grows when a rule, window, container, plant or setting changes, so that cached clocks know they are stale.
  rules_version bigint NOT NULL DEFAULT 0,
  freeze_md text NOT NULL DEFAULT '11-15' CHECK (freeze_md ~ '^\d\d-\d\d$'),
  freeze_standing text NOT NULL DEFAULT 'assumed',
  notice_days int NOT NULL DEFAULT 45 CHECK (notice_days BETWEEN 1 AND 365),
  -- Plants whose plant-by day lies on or before this day count as declining when nobody takes them.
  season_end_on date NOT NULL,
  rolled_on date,
  created_at timestamptz NOT NULL DEFAULT now()
);

CREATE TABLE person (
  id uuid PRIMARY KEY,
  email text NOT NULL,
  name text NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  password_hash text NOT NULL,
  created_at timestamptz NOT NULL DEFAULT now()
);
CREATE UNIQUE INDEX person_email_key ON person (lower(email));

CREATE TABLE membership (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  person_id uuid NOT NULL REFERENCES person (id),
  role text NOT NULL CHECK (role IN ('owner', 'grower', 'crew', 'viewer')),
  ended_at timestamptz,
  PRIMARY KEY (nursery_id, person_id)
);
-- One person belongs to one nursery for now.
CREATE UNIQUE INDEX membership_person_key ON membership (person_id);

CREATE TABLE token (
  hash bytea PRIMARY KEY CHECK (length(hash) = 32),
  kind text NOT NULL CHECK (kind IN ('session', 'calendar', 'api', 'public')),
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  person_id uuid REFERENCES person (id),
  created_at timestamptz NOT NULL,
  expires_at timestamptz NOT NULL,
  revoked_at timestamptz
);
CREATE INDEX token_person_idx ON token (person_id);

-- Failed sign-ins by address and by account, so that guessing is slowed across restarts.
CREATE TABLE sign_in_failure (
  id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  subject text NOT NULL,
  failed_at timestamptz NOT NULL
);
CREATE INDEX sign_in_failure_subject_idx ON sign_in_failure (subject, failed_at);

CREATE TABLE command (
  nursery_id uuid NOT NULL REFERENCES nursery (id),
  id uuid NOT NULL,
  version bigint NOT NULL,
  name text NOT NULL,
  person_id uuid REFERENCES person (id),
  input_hash text NOT NULL,
  answer jsonb NOT NULL,
  recorded_at timestamptz NOT NULL,
  PRIMARY KEY (nursery_id, id)
);
CREATE UNIQUE INDEX command_version_key ON command (nursery_id, version);
