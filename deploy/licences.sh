#!/usr/bin/env bash
# Lists what the program is made of, with licences, from a software bill of materials (CycloneDX) of the locked packages.
# Usage: deploy/licences.sh            writes deploy/licences.md
#        deploy/licences.sh --check    fails if that file is not what the packages say, or a licence is new to us
#        deploy/licences.sh --sbom F   writes the bill of materials itself
set -Eeuo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet restore src/NightWatch.Service --locked-mode -v q >/dev/null
dotnet tool restore >/dev/null
version=$(sed -n 's|.*<Version>\(.*\)</Version>.*|\1|p' Directory.Build.props)
dotnet tool run dotnet-CycloneDX -- src/NightWatch.Service/NightWatch.Service.csproj --recursive --disable-package-restore --output-format Json \
  --set-name nightwatch --set-version "$version" -o "$work" -fn sbom.json >"$work/log" 2>&1 || { cat "$work/log" >&2; exit 1; }
if [ "${1:-}" = --sbom ]; then cp "$work/sbom.json" "$2"; exit; fi

python3 - "$work/sbom.json" >"$work/licences.md" <<'PY'
import json, sys
# Ours to ship with a program under MIT: permissive, notice kept.
accepted = {"MIT", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "PostgreSQL"}
rows, strange = [], []
for part in json.load(open(sys.argv[1]))["components"]:
    names = [entry.get("expression") or entry["license"].get("id") or entry["license"].get("name") for entry in part.get("licenses", [])]
    said = " or ".join(names) or "none stated"
    if not any(name in accepted for name in names): strange.append(f"{part['name']} {part['version']}: {said}")
    rows.append((part["name"], part["version"], said))
print("# What the program is made of\n\nWritten by `deploy/licences.sh` from the locked packages. The program itself is under MIT (LICENSE).\n")
print("| package | version | licence |\n| --- | --- | --- |")
for row in sorted(rows, key=lambda row: row[0].lower()): print("| " + " | ".join(row) + " |")
print("""
Published with the runtime inside, also: Microsoft.NETCore.App and Microsoft.AspNetCore.App (MIT).

| data and fonts inside | licence | where it stands |
| --- | --- | --- |
| populated places: GeoNames (geonames.org) | CC BY 4.0 | `src/NightWatch.Places/Gazetteer/README.md` |
| time zones by place: timezone-boundary-builder, from OpenStreetMap | ODbL 1.0 | `src/NightWatch.Places/Zones/README.md` |
| series of Sun, Moon and nutation, leap seconds | MIT and BSD-3-Clause sources | `src/NightWatch.Sky/Tables/README.md` and the licences beside it |
| showpieces of the sky (`showpieces.tsv`): OpenNGC, Mattia Verga and contributors (github.com/mattiaverga/OpenNGC) | CC BY-SA 4.0, which that file stays under | `src/NightWatch.Sky/Tables/README.md` |
| meteor showers: IAU Meteor Data Center, Global Meteor Network, International Meteor Organization | facts | `src/NightWatch.Sky/Tables/README.md` |
| tz database, inside NodaTime | public domain | NodaTime |
| DejaVu Sans | Bitstream Vera and Arev licences | `src/NightWatch.Pictures/Fonts/LICENSE-DejaVu.txt` |""")
if strange:
    print("Not among the accepted licences: " + "; ".join(strange), file=sys.stderr)
    sys.exit(1)
PY
if [ "${1:-}" = --check ]; then
  diff -u deploy/licences.md "$work/licences.md" || { echo "deploy/licences.md is not what the packages say; run deploy/licences.sh" >&2; exit 1; }
else
  cp "$work/licences.md" deploy/licences.md
  echo "Wrote deploy/licences.md"
fi
