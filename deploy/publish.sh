#!/usr/bin/env bash
# Publishes the service: one program file (and the two native libraries beside it), compiled ahead of time, with the runtime inside.
# Usage: deploy/publish.sh [linux-x64|linux-arm64] [output folder] [--needs-runtime]
#   --needs-runtime  without the runtime: a fifth of the size, for a machine that has the ASP.NET Core 10 runtime
set -Eeuo pipefail
cd "$(dirname "$0")/.."
rid=${1:-linux-x64}
out=$(realpath -m "${2:-publish}")
contained=true
[ "${3:-}" != --needs-runtime ] || contained=false
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# Objects and lock file of its own: those in the tree are for development, and a change of the kind of publish must not meet old objects.
# Not tiered: what is compiled here stays as it is. Compiling it again at run time wins nothing over a rehearsal of 40 days (14.6 s of processor
# time without, 15.2 s with) and costs an idle service 5 to 10 MiB; a start takes 0.2 s of processor time more without.
dotnet publish src/NightWatch.Service -c Release -r "$rid" --self-contained "$contained" --artifacts-path "$work/objects" -v q -nologo \
  -p:PublishSingleFile=true -p:PublishReadyToRun=true -p:PublishReadyToRunComposite=false -p:TieredCompilation=false -p:DebugType=none -p:PublishDocumentationFiles=false -p:PublishReferencesDocumentationFiles=false \
  -p:RestoreLockedMode=false -p:NuGetLockFilePath="$work/publish.lock.json" -o "$out"
# Web assets of a kind that the pages do not use; theirs are inside the program.
rm -rf "$out/wwwroot" "$out/nightwatch.staticwebassets.endpoints.json"
chmod -R u=rwX,go=rX "$out"
cp deploy/licences.md LICENSE "$out"
deploy/licences.sh --sbom "$out/sbom.json"
echo "Published for $rid into $out ($(du -sm "$out" | cut -f1) MB)"
