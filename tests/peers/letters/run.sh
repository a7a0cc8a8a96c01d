#!/usr/bin/env bash
# The letters of a short rehearsal through the real service and a real Postfix on loopback, then read by programs that are not ours:
# Python's email, icalendar, dkimpy, html-validate, axe-core in Chromium. Prints PASS or FAIL a check; needs root (Postfix) and Debian.
set -Eeuo pipefail
here=$(cd "$(dirname "$0")" && pwd); cd "$here/../../.."
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 TZ=UTC DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1
work=$(mktemp -d); chmod 755 "$work"; service=
stop() {
  [ -z "$service" ] || kill "$service" 2>/dev/null || true
  [ ! -d "$work/postfix/etc" ] || postfix -c "$work/postfix/etc" stop >/dev/null 2>&1 || true
  rm -rf "$work"
}
trap stop EXIT
need=()
for package in postfix openssl python3-dkim python3-icalendar chromium; do
  dpkg -s "$package" 2>/dev/null | grep -q '^Status: install ok' || need+=("$package")
done
[ ${#need[@]} -eq 0 ] || { apt-get update -qq; apt-get install -y -qq --no-install-recommends "${need[@]}" >/dev/null; }
npm install --silent --no-audit --no-fund --prefix "$work/npm" html-validate@11.21.1 axe-core@4.14.1 puppeteer-core@25.16.0 >/dev/null
dotnet build src/NightWatch.Service -v q -nologo >&2
program=$PWD/src/NightWatch.Service/bin/Debug/net10.0/nightwatch.dll
nightwatch() { dotnet "$program" "$@"; }

# Postfix with folders of its own: TLS on offer, nothing leaves the machine, two mailboxes.
port=$(python3 -c 'import socket; s=socket.socket(); s.bind(("127.0.0.1",0)); print(s.getsockname()[1])')
mkdir -p "$work"/postfix/{etc,spool} "$work/service"
install -d -o postfix "$work/postfix/data"; install -d -o nobody "$work/mail"
openssl req -x509 -newkey rsa:2048 -nodes -keyout "$work/postfix/etc/key.pem" -out "$work/postfix/etc/cert.pem" -days 3 \
  -subj /CN=localhost -addext subjectAltName=DNS:localhost 2>/dev/null
printf '%s\n' "compatibility_level=3.6" "queue_directory=$work/postfix/spool" "data_directory=$work/postfix/data" "myhostname=mx.example.org" \
  "mydestination=" "inet_interfaces=127.0.0.1" "inet_protocols=ipv4" "mynetworks=127.0.0.0/8" "default_transport=error:loopback only" \
  "relay_transport=error:loopback only" "virtual_mailbox_domains=example.org" "virtual_mailbox_base=$work/mail" \
  "virtual_mailbox_maps=inline:{ marlo.quist@example.org=marlo/ ada@example.org=ada/ }" "virtual_uid_maps=static:$(id -u nobody)" \
  "virtual_gid_maps=static:$(id -g nobody)" "virtual_minimum_uid=1" "smtpd_tls_security_level=encrypt" \
  "smtpd_tls_cert_file=$work/postfix/etc/cert.pem" "smtpd_tls_key_file=$work/postfix/etc/key.pem" \
  "smtpd_recipient_restrictions=reject_unauth_destination" "maillog_file=$work/postfix/spool/maillog" "maillog_file_prefixes=$work" \
  > "$work/postfix/etc/main.cf"
sed -E "s/^smtp +inet .*smtpd\$/127.0.0.1:$port inet n - n - - smtpd/; s/^([a-z].* (unix|fifo|inet) +[ny-] +[ny-] +)y /\1n /" \
  /etc/postfix/master.cf.proto > "$work/postfix/etc/master.cf"
postfix -c "$work/postfix/etc" start >/dev/null 2>&1

openssl genrsa -out "$work/dkim.pem" 2048 2>/dev/null; chmod 600 "$work/dkim.pem"
openssl rsa -in "$work/dkim.pem" -pubout -outform DER 2>/dev/null | base64 -w0 > "$work/dkim.pub"
cat > "$work/service/appsettings.json" <<JSON
{ "Database": { "Connection": "$work/service/nightwatch.db" }, "Feeds": { "Order": "fake", "Usage": "private" },
  "Mail": { "Transport": "smtp", "From": "NightWatch <nightwatch@example.org>", "Host": "localhost", "Port": $port, "CaFile": "$work/postfix/etc/cert.pem",
            "Dkim": { "Domain": "example.org", "Selector": "nw", "KeyFile": "$work/dkim.pem" } },
  "Service": { "Port": 0, "TickSeconds": 1, "ListUnsubscribe": "https://night.example.org/stop/k7xw2q" } }
JSON

cd "$work/service"
# Day 33 of the default world takes a night out of the calendar again.
nightwatch rehearse --days 34 --out "$work/rehearsal" >/dev/null 2>&1
rc=0
nightwatch check --send-test ada@example.org > "$work/check.log" 2>&1 || { sed 's/^/  /' "$work/check.log"; echo "FAIL check --send-test"; rc=1; }
# The rehearsal's letters wait in the outbox of a service with the real transport, and it sends them.
/usr/bin/python3 "$here/queue_letters.py" put "$work/service/nightwatch.db" "$work/rehearsal/letters"
dotnet "$program" run > "$work/run.log" 2>&1 & service=$!
/usr/bin/python3 "$here/queue_letters.py" wait "$work/service/nightwatch.db" || { tail -5 "$work/run.log"; rc=1; }
kill "$service" 2>/dev/null || true; wait "$service" 2>/dev/null || true; service=
/usr/bin/python3 "$here/read_letters.py" "$work/mail" "$work/rehearsal/letters" "$work/dkim.pub" "$work/pages" || rc=1
node "$here/pages.mjs" "$work/npm" "$work/pages" "$(command -v chromium)" || rc=1
exit $rc
