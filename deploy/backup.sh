#!/bin/bash
# Backs up database and photos while the program runs; meant for once a night.
#   deploy/backup.sh /var/backups/pursekey [days to keep, 14 unless given]
# Needs the settings of the program, such as DATA_DIR, in the environment or in /etc/pursekey/env.
# Each day is whole: pursekey-DAY.db and pursekey-DAY.db-photos/. Photos that did not change are hard
# links and take no room. What people deleted is gone from the last backup once these days are over.
set -euo pipefail
umask 077

folder=$(realpath -m "${1:?Expected a folder for the backups}")
keep_days=${2:-14}
settings=${PURSEKEY_ENV:-/etc/pursekey/env}
if [[ -r $settings ]]; then
	set -a
	# shellcheck source=/dev/null
	source "$settings"
	set +a
fi

cd "$(dirname "$(realpath "$0")")/.."
mkdir -p "$folder"
newest=$folder/pursekey.db
node dist/src/cli/backup.js "$newest"

today=$folder/pursekey-$(date -u +%Y-%m-%d).db
rm -rf "$today" "$today-photos"
cp -al "$newest-photos" "$today-photos"
cp "$newest" "$today"

find "$folder" -maxdepth 1 -name 'pursekey-*.db' -mtime "+$keep_days" -print0 |
	while IFS= read -r -d '' old; do rm -rf "$old" "$old-photos"; done
