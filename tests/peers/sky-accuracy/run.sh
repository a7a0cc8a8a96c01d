#!/usr/bin/env bash
# Accuracy of the sky against JPL DE431 and ERFA. Installs what it needs (Debian's python3-erfa, gcc; npm's swisseph, whose licence is the
# AGPL: a reference to compare with, nothing of it is in NightWatch). Usage: tests/peers/sky-accuracy/run.sh [SITE-NIGHTS]
set -euo pipefail
cd "$(dirname "$0")/../../.."
here=tests/peers/sky-accuracy
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

need=()
for package in python3-erfa python3-numpy gcc libc6-dev; do
  dpkg -s "$package" 2>/dev/null | grep -q '^Status: install ok' || need+=("$package")
done
if [ ${#need[@]} -gt 0 ]; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${need[@]}" >/dev/null
fi
npm install --silent --ignore-scripts --no-audit --no-fund --prefix "$work" swisseph@0.5.17 astronomy-engine@2.1.19 suncalc@2.0.2 >/dev/null
swe="$work/node_modules/swisseph"
gcc -O2 -w -o "$work/de431" -I "$swe/deps/swisseph" "$here/de431.c" "$swe"/deps/swisseph/swe*.c -lm

dotnet build tests/NightWatch.Bench -c Release -v q -nologo >&2
dotnet build src/NightWatch.Service -c Release -v q -nologo >&2
rc=0
/usr/bin/python3 "$here/compare.py" "$work/de431" "$swe/ephe" \
  tests/NightWatch.Bench/bin/Release/net10.0/NightWatch.Bench.dll src/NightWatch.Service/bin/Release/net10.0/nightwatch.dll \
  "$work" "${1:-600}" || rc=$?

printf '\nThe same events by the altitudes of astronomy-engine, whose own Sun and Moon are good to 2 or 3 arcseconds\n'
node tests/peers/sky-speed/peers.mjs "$work" altitudes "$work/requests.jsonl" "$work/answers.jsonl"
exit $rc
