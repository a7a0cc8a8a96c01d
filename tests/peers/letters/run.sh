#!/usr/bin/env bash
# The letters of a short rehearsal through the real service and a real Postfix on loopback, then read by programs that are not ours:
# Python's email, icalendar, dkimpy, SpamAssassin, html-validate, axe-core in Chromium. Its calendar entries go into Radicale and out again;
# what Postfix could not deliver comes back through Dovecot. Prints PASS or FAIL a check; needs root (Postfix, Dovecot) and Debian.
set -Eeuo pipefail
here=$(cd "$(dirname "$0")" && pwd); cd "$here/../../.."
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 TZ=UTC DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1
work=$(mktemp -d); chmod 755 "$work"; service=; imap=; caldav=
stop() {
  for started in $service $imap $caldav; do kill "$started" 2>/dev/null || true; done
  [ ! -d "$work/postfix/etc" ] || postfix -c "$work/postfix/etc" stop >/dev/null 2>&1 || true
  rm -rf "$work"
}
trap stop EXIT
need=()
for package in postfix dovecot-imapd openssl python3-dkim python3-icalendar spamassassin radicale chromium; do
  dpkg -s "$package" 2>/dev/null | grep -q '^Status: install ok' || need+=("$package")
done
[ ${#need[@]} -eq 0 ] || { apt-get update -qq; apt-get install -y -qq --no-install-recommends "${need[@]}" >/dev/null; }
npm install --silent --no-audit --no-fund --prefix "$work/npm" html-validate@11.21.1 axe-core@4.14.1 puppeteer-core@25.16.0 >/dev/null
dotnet build src/NightWatch.Service -c Release -v q -nologo >&2
program=$PWD/src/NightWatch.Service/bin/Release/net10.0/nightwatch.dll
nightwatch() { dotnet "$program" "$@"; }

# Postfix with folders of its own: TLS on offer, nothing leaves the machine, two mailboxes.
. .ci/services.sh
port=$(free_port); next_hop=$(free_port); imap_port=$(free_port); caldav_port=$(free_port)
mkdir -p "$work"/postfix/{etc,spool} "$work/service"
install -d -o postfix "$work/postfix/data"; install -d -o nobody "$work/mail"
openssl req -x509 -newkey rsa:2048 -nodes -keyout "$work/postfix/etc/key.pem" -out "$work/postfix/etc/cert.pem" -days 3 \
  -subj /CN=localhost -addext subjectAltName=DNS:localhost 2>/dev/null
printf '%s\n' "compatibility_level=3.6" "queue_directory=$work/postfix/spool" "data_directory=$work/postfix/data" "myhostname=mx.example.org" \
  "mydestination=" "inet_interfaces=127.0.0.1" "inet_protocols=ipv4" "mynetworks=127.0.0.0/8" "default_transport=error:loopback only" \
  "relay_transport=error:loopback only" "virtual_mailbox_domains=example.org" "virtual_mailbox_base=$work/mail" \
  "virtual_mailbox_maps=inline:{ marlo.quist@example.org=marlo/ ada@example.org=ada/ nightwatch@example.org=sender/ }" \
  "relay_domains=example.net" "transport_maps=inline:{ { example.net = smtp:[127.0.0.1]:$next_hop } }" \
  "next_hop_restrictions=check_recipient_access inline:{ { gone.quist@example.net = 550 5.1.1 there is no such mailbox here } }, reject" "virtual_uid_maps=static:$(id -u nobody)" \
  "virtual_gid_maps=static:$(id -g nobody)" "virtual_minimum_uid=1" "smtpd_tls_security_level=encrypt" \
  "smtpd_tls_cert_file=$work/postfix/etc/cert.pem" "smtpd_tls_key_file=$work/postfix/etc/key.pem" \
  "smtpd_recipient_restrictions=reject_unauth_destination" "maillog_file=$work/postfix/spool/maillog" "maillog_file_prefixes=$work" \
  > "$work/postfix/etc/main.cf"
sed -E "s/^smtp +inet .*smtpd\$/127.0.0.1:$port inet n - n - - smtpd/; s/^([a-z].* (unix|fifo|inet) +[ny-] +[ny-] +)y /\1n /" \
  /etc/postfix/master.cf.proto > "$work/postfix/etc/master.cf"
# A second server behind it, which refuses what the first has taken: that is what a report comes back for.
echo "127.0.0.1:$next_hop inet n - n - - smtpd -o smtpd_tls_security_level=none -o smtpd_recipient_restrictions=\$next_hop_restrictions" >> "$work/postfix/etc/master.cf"
postfix -c "$work/postfix/etc" start >/dev/null 2>&1

# Dovecot over the sender's Maildir, Radicale with a folder of its own.
printf '%s\n' imap-secret > "$work/imap.secret"; chmod 600 "$work/imap.secret"
printf '%s\n' "base_dir = $work/dovecot" "log_path = $work/dovecot.log" "protocols = imap" "ssl = no" "disable_plaintext_auth = no" "listen = 127.0.0.1" \
  "mail_location = maildir:$work/mail/sender" "first_valid_uid = 1" "default_internal_user = nobody" "default_login_user = nobody" "service imap-login {" "  chroot =" \
  "  inet_listener imap {" "    port = $imap_port" "  }" "  inet_listener imaps {" "    port = 0" "  }" "}" "service anvil {" "  chroot =" "}" \
  "passdb {" "  driver = static" "  args = password=imap-secret" "}" \
  "userdb {" "  driver = static" "  args = uid=nobody gid=$(id -gn nobody) home=$work/mail/sender" "}" > "$work/dovecot.conf"
dovecot -F -c "$work/dovecot.conf" > "$work/dovecot.out" 2>&1 & imap=$!
printf '%s\n' "[server]" "hosts = 127.0.0.1:$caldav_port" "[auth]" "type = none" "[storage]" "filesystem_folder = $work/radicale" "[logging]" "level = warning" > "$work/radicale.conf"
radicale --config "$work/radicale.conf" > "$work/radicale.log" 2>&1 & caldav=$!

openssl genrsa -out "$work/dkim.pem" 2048 2>/dev/null; chmod 600 "$work/dkim.pem"
openssl rsa -in "$work/dkim.pem" -pubout -outform DER 2>/dev/null | base64 -w0 > "$work/dkim.pub"
cat > "$work/service/appsettings.json" <<JSON
{ "Database": { "Connection": "$work/service/nightwatch.db" }, "Feeds": { "Order": "fake", "Usage": "private" },
  "Mail": { "Transport": "smtp", "From": "NightWatch <nightwatch@example.org>", "Host": "localhost", "Port": $port, "CaFile": "$work/postfix/etc/cert.pem",
            "Dkim": { "Domain": "example.org", "Selector": "nw", "KeyFile": "$work/dkim.pem" } },
  "Bounces": { "Host": "127.0.0.1", "Port": $imap_port, "Security": "none", "UserName": "nightwatch@example.org", "PasswordFile": "$work/imap.secret" },
  "Service": { "Port": 0, "TickSeconds": 1, "ListUnsubscribe": "https://night.example.org/stop/k7xw2q" } }
JSON

cd "$work/service"
# Day 38 of the default world takes a night out of the calendar again.
nightwatch rehearse --days "${1:-40}" --out "$work/rehearsal" >/dev/null 2>&1
rc=0
nightwatch watch list >/dev/null
nightwatch check --send-test ada@example.org > "$work/check.log" 2>&1 || { sed 's/^/  /' "$work/check.log"; echo "FAIL check --send-test"; rc=1; }
# The rehearsal's letters wait in the outbox of a service with the real transport, and it sends them.
/usr/bin/python3 "$here/queue_letters.py" put "$work/service/nightwatch.db" "$work/rehearsal/letters"
dotnet "$program" run > "$work/run.log" 2>&1 & service=$!
/usr/bin/python3 "$here/queue_letters.py" wait "$work/service/nightwatch.db" || { tail -n 5 "$work/run.log"; rc=1; }
kill "$service" 2>/dev/null || true; wait "$service" 2>/dev/null || true; service=
# What came back meanwhile is read at the next start.
/usr/bin/python3 "$here/bounced.py" forge "$work/mail/sender" || rc=1
dotnet "$program" run > "$work/run2.log" 2>&1 & service=$!
/usr/bin/python3 "$here/bounced.py" wait "$work/service/nightwatch.db" || { tail -n 5 "$work/run2.log" "$work/dovecot.log"; rc=1; }
kill "$service" 2>/dev/null || true; wait "$service" 2>/dev/null || true; service=
nightwatch suppression list --json | /usr/bin/python3 "$here/bounced.py" list || rc=1
/usr/bin/python3 "$here/read_letters.py" "$work/mail" "$work/rehearsal/letters" "$work/dkim.pub" "$work/pages" || rc=1
/usr/bin/python3 "$here/calendars.py" "http://127.0.0.1:$caldav_port" "$work/mail" || { tail -n 3 "$work/radicale.log"; rc=1; }
perl "$here/spam.pl" "$work"/mail/marlo/new/* "$work"/mail/ada/new/* || rc=1
node "$here/pages.mjs" "$work/npm" "$work/pages" "$(command -v chromium)" || rc=1
exit $rc
