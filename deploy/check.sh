#!/usr/bin/env bash
# Checks what lies in this folder as far as this machine has the tools, and says what it could not check.
# Usage: deploy/check.sh [program]      program: a published nightwatch; without it the proxy is not tried with the real service
set -Eeuo pipefail
program=${1:+$(realpath "$1")}
cd "$(dirname "$0")"
work=$(mktemp -d)
running=()
trap 'for pid in "${running[@]}"; do kill "$pid" 2>/dev/null || true; done; wait; rm -rf "$work"' EXIT
failed=0
say() { printf '%-8s %s\n' "$1" "$2"; [ "$1" != FAULT ] || failed=1; }
# try WHAT TOOL COMMAND...: skipped without the tool
try() {
  local what=$1 tool=$2
  shift 2
  command -v "$tool" >/dev/null || { say skipped "$what: no $tool here"; return; }
  if "$@" >"$work/out" 2>&1; then say ok "$what"; else say FAULT "$what"; sed 's/^/         /' "$work/out"; fi
}
free_port() { python3 -c 'import socket; s=socket.socket(); s.bind(("127.0.0.1",0)); print(s.getsockname()[1])'; }
until_answers() { for _ in $(seq 600); do curl -ks -o "$work/out" "$1" && return; sleep 0.1; done; return 1; }

for script in *.sh container/*.sh; do try "$script parses" bash bash -n "$script"; done

# The units name a program that is not installed here; with one that is there the rest is verified.
mkdir "$work/units"
for unit in *.service *.timer; do sed 's|/opt/nightwatch/nightwatch|/bin/true|' "$unit" >"$work/units/$unit"; done
try "systemd units are sound" systemd-analyze systemd-analyze verify --man=no "$work"/units/*
try "exposure of nightwatch.service is at most 1.5" systemd-analyze systemd-analyze security --offline=yes --threshold=15 nightwatch.service
# An older docker-compose does not know the name of the project; the rest is one format.
cp -r container "$work/container" && mkdir -p "$work/container/out" && sed -i '/^name:/d' "$work/container/compose.yaml"
try "compose.yaml is accepted" docker-compose env MAILNAME=night.example.org docker-compose -f "$work/container/compose.yaml" config -q
try "alerts.yaml is accepted" promtool promtool check rules alerts.yaml
try "the alerts fire and end" promtool promtool test rules alerts.test.yaml
try "Caddyfile is accepted" caddy caddy validate --adapter caddyfile --config proxy/Caddyfile

# The program under the calls that its units allow, and with the exit that its unit does not start again.
if [ -n "$program" ] && command -v systemd-analyze curl >/dev/null && /usr/bin/python3 -c 'import seccomp' 2>/dev/null; then
  units=$PWD port=$(free_port)
  with=(env NIGHTWATCH__FEEDS__ORDER=fake NIGHTWATCH__FEEDS__USAGE=private NIGHTWATCH__SERVICE__TICKSECONDS=1 NIGHTWATCH__SERVICE__PORT="$port")
  mkdir "$work/alone" && cd "$work/alone" && : >"$work/out"
  "${with[@]}" "$units/as-unit.py" "$units/nightwatch.service" "$program" run 2>"$work/log" & pid=$!; running+=($pid)
  for _ in $(seq 600); do curl -fs -o "$work/out" "http://127.0.0.1:$port/health/ready" && break; kill -0 $pid 2>/dev/null || break; sleep 0.1; done
  if grep -qx ready "$work/out"; then
    "${with[@]}" "$units/as-unit.py" "$units/nightwatch-backup.service" "$program" backup kept.db >"$work/out" 2>&1 && say ok "a backup can be made under the system calls of its unit" ||
      { say FAULT "no backup under the system calls of nightwatch-backup.service"; cat "$work/out"; }
    kill $pid; wait $pid && say ok "the service runs and stops under the system calls of its unit" || say FAULT "the service stops with $? under the system calls of its unit"
  else
    kill $pid 2>/dev/null || true; wait $pid || say FAULT "the service ends with $? under the system calls of nightwatch.service (159: killed for a call that is not allowed)"; tail -n 5 "$work/log"
  fi
  code=0; "${with[@]}" NIGHTWATCH__FEEDS__USAGE= "$program" run >"$work/out" 2>&1 || code=$?
  grep -q "^RestartPreventExitStatus=$code\$" "$units/nightwatch.service" && say ok "bad settings (exit $code) are not started again for ever" || say FAULT "bad settings end with $code, and the unit starts them again for ever"
  # The container's start: bad settings wait for somebody, and a stop is passed on.
  "${with[@]}" NIGHTWATCH__FEEDS__USAGE= "$units/container/run.sh" "$program" 2>"$work/log" & pid=$!; running+=($pid)
  for _ in $(seq 300); do grep -q '^Not started again' "$work/log" && break; sleep 0.1; done
  kill -0 $pid 2>/dev/null && grep -q 'Feeds:Usage' "$work/log" && say ok "the container waits with bad settings" || say FAULT "the container does not wait with bad settings"
  code=0; kill $pid; wait $pid || code=$?
  "${with[@]}" "$units/container/run.sh" "$program" 2>"$work/log" & pid=$!; running+=($pid)
  until_answers "http://127.0.0.1:$port/health/live" || true
  kill $pid
  wait $pid && [ $code -eq 2 ] && grep -q 'nothing is in hand' "$work/log" && say ok "the container passes a stop on" || say FAULT "the container does not pass a stop on"
  cd "$units"
else
  say skipped "the program under its units' system calls: needs systemd-analyze, curl, python3-seccomp and a published program as argument"
fi

# The runbook's restore, its very lines, with a user of this machine for the service's.
if [ -n "$program" ] && [ "$(id -u)" = 0 ] && runuser -u nobody -- "$program" --version >"$work/out" 2>&1; then
  chmod 711 "$work"
  install -d -m 0700 -o nobody -g nogroup "$work/state"
  printf '{ "Database": { "Connection": "%s" } }' "$work/state/nightwatch.db" >"$work/settings.json"
  as_service() { (umask 077 && cd / && runuser -u nobody -- "$program" "$@" --config "$work/settings.json"); }
  as_service watch list >"$work/out" && as_service backup "$work/state/copy.db" >"$work/out" && install -m 0600 "$work/state/copy.db" "$work/FILE"
  was=$(stat -c '%U:%G %a' "$work/state/nightwatch.db")
  sed -n '/^## Restore/,/^## [^R]/{/^```sh/,/^```/{/^```/!p}}' runbook.md | sed -e "s|/opt/nightwatch/nightwatch|$program|; s|/etc/nightwatch/appsettings.json|$work/settings.json|; s|/var/lib/nightwatch|$work/state|g" \
    -e "s|-\\([ou]\\) nightwatch|-\\1 nobody|; s|-g nightwatch|-g nogroup|; s|^systemctl \\(.*\\) nightwatch$|echo \\1|; s| FILE | $work/FILE |" >"$work/restore.sh"
  if bash -eu "$work/restore.sh" >"$work/out" 2>&1 && grep -qx start "$work/out" && ls "$work"/state/nightwatch.db.before-* >>"$work/out" &&
    as_service watch list >>"$work/out" 2>&1 && [ "$(stat -c '%U:%G %a' "$work/state/nightwatch.db")" = "$was" ]; then
    say ok "the runbook's restore leaves the database to the service ($was)"
  else
    say FAULT "the runbook's restore does not leave the database as it was ($was)"; cat "$work/restore.sh" "$work/out"; ls -l "$work/state"
  fi
else
  say skipped "the runbook's restore: needs root and a published program that nobody may run"
fi

# nginx, with a certificate made here, on free ports; then a real request through it.
http=$(free_port) tls=$(free_port) inside=$(free_port)
openssl req -x509 -newkey rsa:2048 -nodes -keyout "$work/privkey.pem" -out "$work/fullchain.pem" -days 2 -subj /CN=night.example.org 2>/dev/null
{
  echo "pid $work/nginx.pid; error_log $work/error.log; events {} http { access_log off;"
  for kind in body proxy fastcgi uwsgi scgi; do t=$kind; [ $kind != body ] || t=client_body; echo "${t}_temp_path $work/$kind;"; done
  sed -e "s|/etc/letsencrypt/live/night.example.org|$work|; s|listen 80;|listen 127.0.0.1:$http;|; s|listen 443 ssl http2;|listen 127.0.0.1:$tls ssl http2;|" \
    -e "/listen \[::\]/d; s|127.0.0.1:5380|127.0.0.1:$inside|" proxy/nginx.conf
  echo "}"
} >"$work/nginx.conf"
try "nginx.conf is accepted" nginx nginx -t -q -c "$work/nginx.conf"
if [ -n "$program" ] && command -v nginx >/dev/null && command -v curl >/dev/null; then
  cd "$work"
  export NIGHTWATCH__FEEDS__ORDER=fake NIGHTWATCH__FEEDS__USAGE=private NIGHTWATCH__SERVICE__PORT=$inside NIGHTWATCH__SERVICE__TICKSECONDS=1 \
    NIGHTWATCH__SERVICE__PAGESBASE=https://night.example.org/ NIGHTWATCH__SERVICE__TRUSTEDPROXIES=127.0.0.1
  "$program" run 2>"$work/log" & running+=($!)
  nginx -c "$work/nginx.conf" -g 'daemon off;' & running+=($!)
  site="https://127.0.0.1:$tls"
  if until_answers "$site/" && until_answers "http://127.0.0.1:$inside/health/ready"; then
    curl -ks -D head -o page -H 'Host: night.example.org' "$site/"
    grep -qi '^strict-transport-security: max-age=' head && say ok "the service answers through the proxy, with HSTS" || say FAULT "no HSTS through the proxy: $(head -1 head)"
    curl -ks -D head -o page -H 'Host: night.example.org' "http://127.0.0.1:$http/sign-up?x=1"
    grep -qi "^location: https://night.example.org/sign-up?x=1" head && say ok "plain http is sent on to https" || say FAULT "plain http: $(head -1 head)"
    for hidden in metrics health/ready health/live; do
      [ "$(curl -ks -o page -w '%{http_code}' "$site/$hidden")" = 404 ] && say ok "/$hidden is not to be seen from outside" || say FAULT "/$hidden is to be seen from outside"
    done
    [ "$(curl -ks -o page -w '%{http_code}' "http://127.0.0.1:$inside/metrics")" = 200 ] && say ok "/metrics is to be seen from this machine" || say FAULT "/metrics is not to be seen from this machine"
    (cd "$work" && "$program" check --health >/dev/null) && say ok "check --health says ready" || say FAULT "check --health does not say ready"
  else
    say FAULT "the service does not answer through nginx"; tail -n 5 "$work/log" "$work/error.log"
  fi
else
  say skipped "the service behind nginx: needs nginx, curl and a published program as argument"
fi
exit $failed
