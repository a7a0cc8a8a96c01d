# Services that the tests use: on loopback, under $work, on free ports; stopped at the end whatever happens.
free_port() { python3 -c 'import socket; s=socket.socket(); s.bind(("127.0.0.1",0)); print(s.getsockname()[1])'; }

# Without syncing to disk, unless "on" is asked for: tests make thousands of databases.
start_postgres() {
  pg_bin=$(dirname "$(ls /usr/lib/postgresql/*/bin/pg_ctl | sort -V | tail -1)")
  NW_TEST_PG_PORT=$(free_port); export NW_TEST_PG_PORT
  install -d -o postgres "$work/pg"
  runuser -u postgres -- "$pg_bin/initdb" -D "$work/pg" -A trust -U postgres -E UTF8 --no-sync >/dev/null
  runuser -u postgres -- "$pg_bin/pg_ctl" -D "$work/pg" -w -l "$work/pg/log" \
    -o "-c listen_addresses=127.0.0.1 -c port=$NW_TEST_PG_PORT -c unix_socket_directories=$work/pg -c fsync=${1:-off}" start >/dev/null
}

stop_services() {
  [ -z "${pg_bin:-}" ] || runuser -u postgres -- "$pg_bin/pg_ctl" -D "$work/pg" -m immediate stop >/dev/null 2>&1 || true
  rm -rf "$work"
}
