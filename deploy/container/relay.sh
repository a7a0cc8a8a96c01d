#!/bin/sh
# Postfix in the foreground. MAILNAME: this host's name, as its reverse DNS says it. RELAYHOST: "[smtp.example.org]:587" or empty.
set -eu
postconf -e "myhostname=${MAILNAME:?set it to the name of this host}" "mydestination=" "inet_interfaces=loopback-only" "mynetworks=127.0.0.0/8 [::1]/128" \
  "relayhost=${RELAYHOST:-}" "smtpd_relay_restrictions=permit_mynetworks,reject" "smtp_tls_security_level=${RELAY_TLS:-may}" \
  "smtp_tls_CAfile=/etc/ssl/certs/ca-certificates.crt" "smtputf8_enable=no" "disable_vrfy_command=yes" "message_size_limit=2097152" \
  "maillog_file=/dev/stdout" "compatibility_level=3.6"
# Containers have no syslog; and chroot would want copies of the resolver's files.
postconf -F '*/*/chroot = n'
if [ -f /run/secrets/relay-login ]; then
  cp /run/secrets/relay-login /etc/postfix/login
  postmap /etc/postfix/login
  postconf -e "smtp_sasl_auth_enable=yes" "smtp_sasl_password_maps=hash:/etc/postfix/login" "smtp_sasl_security_options=noanonymous" "smtp_tls_security_level=encrypt"
fi
exec postfix start-fg
