#!/bin/sh
# Run once by the database's image when its volume is empty. The server's login owns nothing and can only become
# rootclock_app, the role that row security binds; the migrations, run as the owner, give that role its rights.
set -eu
psql --no-psqlrc --set ON_ERROR_STOP=1 --set password="$ROOTCLOCK_SERVER_PASSWORD" --username "$POSTGRES_USER" --dbname "$POSTGRES_DB" <<'SQL'
CREATE ROLE rootclock_app NOLOGIN;
CREATE ROLE rootclock_server LOGIN NOINHERIT PASSWORD :'password';
GRANT rootclock_app TO rootclock_server;
SQL
