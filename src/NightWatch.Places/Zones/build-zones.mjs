// Makes zones.bin.br from the npm package geo-tz. How to run and what comes out: README.md beside this file.
import { createRequire } from "node:module";
import { openSync, readSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";

const [deepest = "15", out = "zones.bin.br"] = process.argv.slice(2);
const require = createRequire(`${process.cwd()}/`);
const { decode } = require("geobuf");
const Pbf = require("pbf");
const data = join(dirname(require.resolve("geo-tz")), "..", "data");
const index = JSON.parse(readFileSync(join(data, "timezones.geojson.index.json"), "utf8"));
const file = openSync(join(data, "timezones.geojson.geo.dat"), "r");

// Zone 0 is the sea, which has no border worth keeping: its zone follows from the longitude.
const names = index.timezones;
const idOf = new Map(names.map((name, i) => [name, name.startsWith("Etc/") ? 0 : i + 1]));

const features = (at) => {
  const bytes = Buffer.alloc(at.len);
  if (readSync(file, bytes, 0, at.len, at.pos) < at.len) throw new Error("geo.dat ends early");
  return decode(new Pbf(bytes)).features.map((feature) => {
    const polygons = feature.geometry.type === "Polygon" ? [feature.geometry.coordinates] : feature.geometry.coordinates;
    const edges = [];
    for (const ring of polygons.flat()) for (let i = 1; i < ring.length; i++) edges.push([...ring[i - 1], ...ring[i]]);
    return { zone: idOf.get(feature.properties.tzid), edges };
  });
};

// Even-odd rule over all rings, holes included.
const holds = (feature, lon, lat) => {
  let inside = false;
  for (const [x1, y1, x2, y2] of feature.edges) if (y1 > lat !== y2 > lat && lon < x1 + ((lat - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  return inside;
};
const zoneAt = (all, lon, lat) => all.find((feature) => holds(feature, lon, lat))?.zone ?? 0;

const merged = (children) => (children.every((child) => child === children[0] && typeof child === "number") ? children[0] : children);
const quarters = ({ left, bottom, right, top }) => {
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  // The order of geo-tz: north-east, north-west, south-west, south-east.
  return [
    { left: x, bottom: y, right, top }, { left, bottom: y, right: x, top },
    { left, bottom, right: x, top: y }, { left: x, bottom, right, top: y },
  ];
};
const cut = (all, near, box, depth) => {
  const { left, bottom, right, top } = box;
  const here = near.filter(([x1, y1, x2, y2]) => Math.max(x1, x2) >= left && Math.min(x1, x2) <= right && Math.max(y1, y2) >= bottom && Math.min(y1, y2) <= top);
  if (here.length === 0 || depth >= Number(deepest)) return zoneAt(all, (left + right) / 2, (bottom + top) / 2);
  return merged(quarters(box).map((quarter) => cut(all, here, quarter, depth + 1)));
};
const tree = (node, box, depth) => {
  if (node === undefined) return 0;
  if (node.pos >= 0 && node.len) {
    const all = features(node);
    return cut(all, all.flatMap((feature) => feature.edges), box, depth);
  }
  if (node.length > 0) return idOf.get(names[node[0]]);
  return merged(["a", "b", "c", "d"].map((letter, i) => tree(node[letter], quarters(box)[i], depth + 1)));
};

const root = tree(index.lookup, { left: -179.9999, bottom: -89.9999, right: 179.9999, top: 89.9999 }, 0);

// Which nodes are cut, as bits; then each leaf's zone as its place in a list that has the zone last met in front.
const bits = [];
const leaves = [];
const recent = [0, ...names.map((_, i) => i + 1)];
const walk = (node) => {
  bits.push(typeof node === "number" ? 0 : 1);
  if (typeof node !== "number") return node.forEach(walk);
  const at = recent.indexOf(node);
  recent.splice(at, 1);
  recent.unshift(node);
  leaves.push(at);
};
walk(root);
const bytes = [];
const varint = (n) => {
  for (; n >= 128; n = Math.floor(n / 128)) bytes.push((n % 128) | 128);
  bytes.push(n);
};
varint(names.length);
for (const name of names) { varint(name.length); for (const c of Buffer.from(name, "ascii")) bytes.push(c); }
varint(bits.length);
for (let i = 0; i < bits.length; i += 8) bytes.push(bits.slice(i, i + 8).reduce((byte, bit, j) => byte | (bit << j), 0));
for (const leaf of leaves) varint(leaf);
const raw = Buffer.from(bytes);
writeFileSync(out, brotliCompressSync(raw, { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24, [constants.BROTLI_PARAM_SIZE_HINT]: raw.length } }));
console.log(`${names.length} zones, ${bits.length} nodes, ${leaves.length} leaves, ${raw.length} bytes`);
