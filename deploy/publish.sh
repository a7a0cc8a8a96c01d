#!/usr/bin/env bash
# Publishes the service for a machine with the .NET 10 runtime (linux-x64 or linux-arm64).
# Usage: deploy/publish.sh [linux-x64|linux-arm64] [output folder]
set -Eeuo pipefail
cd "$(dirname "$0")/.."
rid=${1:-linux-x64}
out=${2:-publish}
# The lock files are for development; a runtime identifier would change them.
dotnet publish src/NightWatch.Service -c Release -r "$rid" --self-contained false \
  -p:PublishReadyToRun=true -p:RestoreLockedMode=false -p:NuGetLockFilePath="obj/publish.$rid.lock.json" -o "$out"
echo "Published for $rid into $out"
