#!/usr/bin/env bash
# Watches and letters a minute at 1, 2 and 3 processes: a real PostgreSQL that syncs to disk, a real Postfix that queues to disk and throws away
# what it has delivered, both on loopback and in a folder of their own. Usage: run.sh [WATCHES [SITES]]; needs root and Debian.
set -Eeuo pipefail
here=$(cd "$(dirname "$0")" && pwd); cd "$here/../../.."
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 TZ=UTC DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1
work=$(mktemp -d); chmod 755 "$work"
. .ci/services.sh
stop() {
  [ ! -d "$work/postfix/etc" ] || postfix -c "$work/postfix/etc" stop >/dev/null 2>&1 || true
  stop_services
}
trap stop EXIT

need=()
for package in postfix postgresql util-linux; do
  dpkg -s "$package" 2>/dev/null | grep -q '^Status: install ok' || need+=("$package")
done
[ ${#need[@]} -eq 0 ] || { apt-get update -qq; apt-get install -y -qq --no-install-recommends "${need[@]}" >/dev/null; }
dotnet build tests/NightWatch.Bench -c Release -v q -nologo

start_postgres on
port=$(free_port)
mkdir -p "$work"/postfix/{etc,spool}; install -d -o postfix "$work/postfix/data"
printf '%s\n' "compatibility_level=3.6" "queue_directory=$work/postfix/spool" "data_directory=$work/postfix/data" "myhostname=mx.example.org" \
  "mydestination=" "inet_interfaces=127.0.0.1" "inet_protocols=ipv4" "mynetworks=127.0.0.0/8" "default_transport=discard:" "relay_domains=example.org" \
  "relay_transport=discard:" "maillog_file=$work/postfix/spool/maillog" "maillog_file_prefixes=$work" > "$work/postfix/etc/main.cf"
sed -E "s/^smtp +inet .*smtpd\$/127.0.0.1:$port inet n - n - - smtpd/; s/^([a-z].* (unix|fifo|inet) +[ny-] +[ny-] +)y /\1n /" \
  /etc/postfix/master.cf.proto > "$work/postfix/etc/master.cf"
postfix -c "$work/postfix/etc" start >/dev/null 2>&1

database="Host=127.0.0.1;Port=$NW_TEST_PG_PORT;Username=postgres;Database=postgres"
bench=tests/NightWatch.Bench/bin/Release/net10.0/NightWatch.Bench.dll
dotnet "$bench" load make "$database" "${1:-10000}" "${2:-2000}" 4
python3 "$here/measure.py" "$bench" "$database" "$port"
