#!/bin/sh
# Runs the service in its container and passes its end on, but for settings that cannot be right (exit 2): the engine would start it again
# for ever, so it waits here instead, unhealthy, with the reason as the last line of its log, until somebody mends them and restarts it.
# Not "restart: on-failure" with a maximum: then the service would stay away after every orderly reboot of the host.
# Usage: run.sh [program]
program=${1:-/opt/nightwatch/nightwatch}
child='' told=''
trap 'told=yes; [ -z "$child" ] || kill -TERM "$child" 2>/dev/null' TERM INT
"$program" run & child=$!
[ -z "$told" ] || kill -TERM "$child" 2>/dev/null
# A signal ends wait early; the service ends in its own time after it.
while wait "$child"; code=$?; kill -0 "$child" 2>/dev/null; do :; done
[ "$code" -eq 2 ] && [ -z "$told" ] || exit "$code"
echo "Not started again: mend the settings above, then restart this container." >&2
sleep infinity & child=$!
[ -z "$told" ] || kill "$child"
wait "$child"
exit 2
