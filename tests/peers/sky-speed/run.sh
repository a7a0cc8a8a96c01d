#!/usr/bin/env bash
# Processor time per site-night on one core, side by side with the npm packages astronomy-engine and suncalc, and the ratio; then a million
# site-nights on all cores with the accuracy of the same answers. Installs the packages into a temporary folder.
set -euo pipefail
cd "$(dirname "$0")/../../.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
npm install --silent --no-audit --no-fund --prefix "$work" astronomy-engine@2.1.19 suncalc@2.0.2 >/dev/null
dotnet build tests/NightWatch.Bench -c Release -v q -nologo >&2
bench=tests/NightWatch.Bench/bin/Release/net10.0/NightWatch.Bench.dll

peers=$(node tests/peers/sky-speed/peers.mjs "$work" speed)
ours=$(dotnet "$bench" sky-core)
echo "$ours"
printf '%s\n%s\n' "$peers" "$ours" | node -e '
  const [json, ...lines] = require("fs").readFileSync(0, "utf8").trim().split("\n")
  const peers = JSON.parse(json)
  const own = Number(lines.find(l => l.includes("share of the fits")).split(": ")[1])
  console.log(`NightWatch         ${own.toFixed(2).padStart(9)} microseconds a site-night, its share of the fits included`)
  console.log(`astronomy-engine   ${peers.astronomyEngine.toFixed(2).padStart(9)} microseconds a site-night: ${(peers.astronomyEngine / own).toFixed(0)} times as long`)
  console.log(`suncalc            ${peers.sunCalc.toFixed(2).padStart(9)} microseconds a site-night: ${(peers.sunCalc / own).toFixed(1)} times as long, for Sun and Moon times only, no subject`)
  process.exitCode = peers.astronomyEngine / own >= 100 ? 0 : 1'
dotnet "$bench" sky
