#!/bin/bash
# Puts a backup back. The program has to be stopped; what stood there is kept beside it.
#   systemctl stop pursekey
#   deploy/restore.sh /var/backups/pursekey/pursekey-2026-05-02.db
#   systemctl start pursekey
# Needs the settings of the program, such as DATA_DIR, in the environment or in /etc/pursekey/env.
set -euo pipefail
umask 077

backup=$(realpath "${1:?Expected the database file of a backup}")
settings=${PURSEKEY_ENV:-/etc/pursekey/env}
if [[ -r $settings ]]; then
	set -a
	# shellcheck source=/dev/null
	source "$settings"
	set +a
fi

cd "$(dirname "$(realpath "$0")")/.."
data=${DATA_DIR:-./data}
database=$data/pursekey.db
if [[ -n ${DATABASE_URL:-} ]]; then database=${DATABASE_URL#file:}; fi

if [[ -e $database ]] && command -v fuser >/dev/null && fuser -s "$database" 2>/dev/null; then
	echo "Expected the program to be stopped; something has $database open." >&2
	exit 1
fi
node dist/src/cli/backup.js --check "$backup"

mkdir -p "$data" "$(dirname "$database")"
stamp=before-$(date -u +%Y%m%dT%H%M%SZ)
# -wal and -shm belong to the old database and would spoil the new one.
for companion in "" -wal -shm; do
	if [[ -e $database$companion ]]; then mv "$database$companion" "$database.$stamp$companion"; fi
done
if [[ -e $data/photos ]]; then mv "$data/photos" "$data/photos.$stamp"; fi
cp -R "$backup-photos" "$data/photos"
cp "$backup" "$database.half"
mv "$database.half" "$database"
# Whoever owns the folder owns what is in it, also when root restores.
if [[ $(id -u) == 0 ]]; then
	chown --reference="$data" "$database"
	chown -R --reference="$data" "$data/photos"
fi
echo "Restored $database. What was there before ends in .$stamp: erase it once all is well."
