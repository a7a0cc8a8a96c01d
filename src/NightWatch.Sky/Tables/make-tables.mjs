// Converts the published series into the tab-separated tables beside this file. Usage and provenance: README.md.
//   node make-tables.mjs ASTRONOMIA_PACKAGE_DIR ERFA_SOURCE_DIR
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { createHash } from 'node:crypto'

const [astronomia, erfa] = process.argv.slice(2)
if (!astronomia || !erfa) {
  console.error('usage: node make-tables.mjs ASTRONOMIA_PACKAGE_DIR ERFA_SOURCE_DIR')
  process.exit(2)
}
const here = dirname(fileURLToPath(import.meta.url))

function write (name, header, rows) {
  const text = header.map(line => `# ${line}\n`).join('') + rows.map(row => row.join('\t') + '\n').join('')
  writeFileSync(join(here, name), text)
  console.log(name, rows.length, 'rows', createHash('sha256').update(text).digest('hex'))
}

// Moon: every term whose amplitude, half a century from J2000 (powers of T weigh less there), reaches the cut.
const CUT_ARCSEC = 0.0002
const CUT_KM = 0.0004
const full = (await import(pathToFileURL(join(astronomia, 'data/elpMppDeFull.js')))).default
const moon = [['W', 0, 1, ...full.W1]]
for (const series of ['L', 'B', 'R']) {
  for (const power of Object.keys(full[series])) {
    for (const term of full[series][power]) {
      const cut = series === 'R' ? CUT_KM : CUT_ARCSEC
      if (Math.abs(term[0]) * 0.5 ** Number(power) >= cut) moon.push([series, power, ...term])
    }
  }
}
write('moon.tsv', [
  'ELP/MPP02 fitted to DE405: Chapront & Francou 2003, A&A 404, 735. From npm astronomia 4.2.0, data/elpMppDeFull.js (MIT, see LICENSE-astronomia.txt).',
  'series (L, B: arcseconds; R: km), power of T, amplitude, then the phase of the sine: five coefficients of powers of T, radians, T in Julian centuries TT from J2000.',
  'Row W: the mean longitude W1 itself, radians, as five coefficients of powers of T. Terms below 0.0002 arcsec and 0.0004 km half a century from J2000 are left out.',
], moon)

// Earth: arrays e0x..e2z (Sun to Earth) and s0x..s2z (solar-system barycentre to Sun), triplets amplitude, phase, frequency.
const epv = readFileSync(join(erfa, 'src/epv00.c'), 'utf8')
const earth = []
for (const vector of ['e', 's']) {
  for (const axis of ['x', 'y', 'z']) {
    for (const power of [0, 1, 2]) {
      const body = epv.match(new RegExp(`double ${vector}${power}${axis}\\[\\] = \\{([^}]*)\\}`))[1]
      const numbers = body.split(',').map(n => n.trim()).filter(n => n)
      for (let i = 0; i < numbers.length; i += 3) earth.push([vector + axis, power, ...numbers.slice(i, i + 3)])
    }
  }
}
write('earth.tsv', [
  'Simplified VSOP2000 (Moisson & Bretagnon 2001, CMDA 80, 205), ecliptic of J2000, au. From ERFA 2.0.0, src/epv00.c (3-clause BSD, see LICENSE-erfa.txt).',
  'vector and axis (e: Sun to Earth, s: barycentre to Sun), power of t, amplitude, phase (rad), frequency (rad/year) of the cosine; t in Julian years from J2000.',
], earth)

// Nutation: rows of the struct array in nut00b.c.
const nut = readFileSync(join(erfa, 'src/nut00b.c'), 'utf8')
const rows = nut.slice(nut.indexOf('x[] = {'), nut.indexOf('Number of terms')).matchAll(/\{([-\d.,\s]+)\}/g)
write('nutation.tsv', [
  'Nutation of 2000, model B: McCarthy & Luzum 2003, CMDA 85, 37. From ERFA 2.0.0, src/nut00b.c (3-clause BSD, see LICENSE-erfa.txt). Units of 0.1 microarcsecond.',
  'multiples of l, l\', F, D, Omega; longitude sin, T sin, cos; obliquity cos, T cos, sin.',
], [...rows].map(row => row[1].split(',').map(n => Number(n))))

// Leap seconds: the entries of dat.c from 1972 on, when TAI - UTC became a whole number.
const dat = readFileSync(join(erfa, 'src/dat.c'), 'utf8')
const leaps = [...dat.matchAll(/\{\s*(\d{4}),\s*(\d+),\s*(\d+)\.0\s*\}/g)].map(m => [`${m[1]}-${m[2].padStart(2, '0')}-01`, m[3]])
write('leap-seconds.tsv', [
  'TAI - UTC in seconds from 0h UTC of each date (IERS Bulletin C). From ERFA 2.0.0, src/dat.c (3-clause BSD, see LICENSE-erfa.txt).',
], leaps)

copyFileSync(join(astronomia, 'LICENSE'), join(here, 'LICENSE-astronomia.txt'))
copyFileSync(join(erfa, 'LICENSE'), join(here, 'LICENSE-erfa.txt'))
