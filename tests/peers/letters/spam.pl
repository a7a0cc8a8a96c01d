# Scores letters with SpamAssassin's own rules, nothing asked of the network: spam.pl FILE... At its default a letter is junk from 5.0 on;
# ours stay below 1.0. Rules that only look at where this test's mail server stands are not the letters' to answer for.
use strict; use warnings;
use Mail::SpamAssassin;

# Loopback has no reverse name and no public key in the DNS, and a rehearsal is dated as its own clock goes (DATE_IN_...).
my %elsewhere = map { $_ => 1 } qw(NO_RELAYS NO_RECEIVED ALL_TRUSTED UNPARSEABLE_RELAY RDNS_NONE DKIM_SIGNED DKIM_INVALID T_DKIM_INVALID TVD_RCVD_SINGLE HELO_LOCALHOST FSL_HELO_NON_FQDN_1 HELO_NO_DOMAIN);
my $judge = Mail::SpamAssassin->new({ local_tests_only => 1, dont_copy_prefs => 1, userprefs_filename => '/dev/null' });
my ($worst, $about, %hits, %kinds) = (-99, '');
for my $file (@ARGV) {
  open my $letter, '<:raw', $file or die "$file: $!";
  local $/; my $raw = <$letter>;
  # One letter of each beginning of a subject says as much as all of them.
  my ($kind) = $raw =~ /^Subject: (?:=\?utf-8\?.\?)?(\w+)/m; next if $kinds{$kind // ''}++ > 1;
  my $mail = $judge->parse($raw); my $status = $judge->check($mail);
  my ($own, @own) = (0);
  for my $rule (split /,/, $status->get_names_of_tests_hit()) { next if $elsewhere{$rule} || $rule eq 'none' || $rule =~ /^DATE_IN_/; my $score = $judge->{conf}{scores}{$rule} // 1; $own += $score; push @own, $rule if $score > 0.01; }
  $hits{$_}++ for @own;
  ($worst, $about) = ($own, "$kind: @own") if $own > $worst;
  $status->finish; $mail->finish;
}
my $good = $worst < 1.0 && %kinds;
printf "%s SpamAssassin %s scores the letters %.1f at most (%s)\n", $good ? 'PASS' : 'FAIL', Mail::SpamAssassin::Version(), $worst, join(', ', map { "$_ $hits{$_}" } sort keys %hits) || 'no rule';
print "   $about\n" unless $good;
exit($good ? 0 : 1);
