// Makes maps.json and glyphs.json beside this file:
//   cd benchmarks/corpus && npm install --no-package-lock && node make.mjs [folder of DejaVuSans-Bold.ttf and DejaVuSerif-Bold.ttf]
// The data files are kept in the repository, so that only who changes them needs npm and the font.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { feature } from "topojson-client";
import opentype from "opentype.js";

const require = createRequire(import.meta.url);
const fonts = process.argv[2] ?? "/usr/share/fonts/truetype/dejavu";

// The longer side of every outline is this many units.
const SIDE = 10000;

// Of a coast nothing is left that is smaller than this share of the longer side: a shop cuts no finer.
const COAST = 0.004;

// A curve of a glyph is cut into this many chords.
const CHORDS = 12;

// Taken as the atlases list them, by these rules and no others: one ring far larger than the rest, and a share of its box that
// leaves room for pods.
const LEAST_SHARE_OF_BOX = 0.35;
const LEAST_SHARE_OF_ALL = 0.8;
const COUNTRIES = 24, STATES = 16;

const area = ring => ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length];
    return sum + (x * v - u * y) / 2;
}, 0);

const box = ring => ring.reduce(
    ([a, b, c, d], [x, y]) => [Math.min(a, x), Math.min(b, y), Math.max(c, x), Math.max(d, y)], [Infinity, Infinity, -Infinity, -Infinity]);

// Douglas and Peucker 1973, between the two vertices that lie farthest apart along X.
function simplified(ring, tolerance) {
    const start = ring.reduce((best, p, i) => p[0] < ring[best][0] ? i : best, 0);
    const turned = [...ring.slice(start), ...ring.slice(0, start)];
    const middle = turned.reduce((best, p, i) => p[0] > turned[best][0] ? i : best, 0);
    const keep = new Set([0, middle]);
    const closed = [...turned, turned[0]];
    function split(from, to) {
        const [a, b] = [closed[from], closed[to]];
        const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
        let [far, at] = [tolerance, -1];
        for (let i = from + 1; i < to; i++) {
            const p = closed[i];
            const d = length === 0 ? Math.hypot(p[0] - a[0], p[1] - a[1])
                : Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length;
            if (d > far) [far, at] = [d, i];
        }
        if (at >= 0) { keep.add(at); split(from, at); split(at, to); }
    }
    split(0, middle);
    split(middle, turned.length);
    return turned.filter((_, i) => keep.has(i));
}

function crosses(ring) {
    const side = (a, b, c) => Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
    const n = ring.length;
    for (let i = 0; i < n; i++) {
        for (let j = i + 1; j < n; j++) {
            if (j === i + 1 || (i === 0 && j === n - 1)) continue;
            const [a, b, c, d] = [ring[i], ring[(i + 1) % n], ring[j], ring[(j + 1) % n]];
            if (side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b)) return true;
        }
    }
    return false;
}

// Whole units, no vertex twice, the longer side SIDE, the lower left corner of the outline's box at zero.
function scaled(rings) {
    const [minX, minY, maxX, maxY] = box(rings[0]);
    const scale = SIDE / Math.max(maxX - minX, maxY - minY);
    return rings.map(ring => ring.map(([x, y]) => [Math.round((x - minX) * scale), Math.round((y - minY) * scale)])
        .filter((p, i, all) => { const q = all[(i + 1) % all.length]; return p[0] !== q[0] || p[1] !== q[1]; }));
}

const slug = name => name.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");

function coast(name, geometry, project) {
    const polygons = geometry.type === "Polygon" ? [geometry.coordinates] : geometry.coordinates;
    const outer = polygons.map(p => project(p[0].slice(0, -1))).sort((a, b) => Math.abs(area(b)) - Math.abs(area(a)));
    const all = outer.reduce((sum, r) => sum + Math.abs(area(r)), 0);
    const [minX, minY, maxX, maxY] = box(outer[0]);
    const own = Math.abs(area(outer[0]));
    if (own < LEAST_SHARE_OF_ALL * all || own < LEAST_SHARE_OF_BOX * (maxX - minX) * (maxY - minY)) return null;
    const ring = simplified(scaled([outer[0]])[0], COAST * SIDE);
    return ring.length < 8 || crosses(ring) ? null : { name: slug(name), rings: scaled([ring]) };
}

function written(file, source, licence, outlines) {
    const lines = outlines.map(o => "    " + JSON.stringify({ name: o.name, rings: o.rings.map(r => r.flat()) }));
    writeFileSync(new URL(file, import.meta.url), `{\n  "source": ${JSON.stringify(source)},\n  "licence": ${JSON.stringify(licence)},\n  "longerSide": ${SIDE},\n  "outlines": [\n${lines.join(",\n")}\n  ]\n}\n`);
    console.log(file, outlines.length, "outlines,", outlines.reduce((s, o) => s + o.rings.reduce((t, r) => t + r.length, 0), 0), "vertices");
}

// Degrees to a plane by the cosine of the middle latitude: a shape to cut, not a map to sail by.
function plate(ring) {
    const [, south, , north] = box(ring);
    const squeeze = Math.cos((south + north) / 2 * Math.PI / 180);
    return ring.map(([x, y]) => [x * squeeze, y]);
}

const world = require("world-atlas/countries-50m.json");
const nations = feature(world, world.objects.countries).features
    .map(f => f.properties.name === "Antarctica" ? null : coast(f.properties.name, f.geometry, plate)).filter(Boolean);
const states = require("us-atlas/states-albers-10m.json");
const union = feature(states, states.objects.states).features
    .map(f => coast(f.properties.name, f.geometry, ring => ring.map(([x, y]) => [x, -y]))).filter(Boolean);
const every = (list, count) => Array.from({ length: count }, (_, i) => list[Math.floor(i * list.length / count)]);
written("maps.json",
    "Natural Earth 1:50m countries through npm's world-atlas 2.0.2; US Census Bureau cartographic boundaries of states through npm's us-atlas 3.0.1",
    "Natural Earth: public domain. US Census Bureau: public domain (a work of the United States government). The packages: ISC.",
    [...every(nations, COUNTRIES), ...every(union, STATES).map(s => ({ ...s, name: "us-" + s.name }))]);

function glyph(font, prefix, letter) {
    const rings = [];
    let [from, ring] = [[0, 0], []];
    for (const c of font.charToGlyph(letter).path.commands) {
        const to = [c.x, c.y];
        if (c.type === "M") ring = [to];
        if (c.type === "L") ring.push(to);
        if (c.type === "Q") {
            for (let k = 1; k <= CHORDS; k++) {
                const t = k / CHORDS, u = 1 - t;
                ring.push([0, 1].map(i => u * u * from[i] + 2 * u * t * [c.x1, c.y1][i] + t * t * to[i]));
            }
        }
        if (c.type === "Z") rings.push(ring);
        from = to;
    }
    const largest = rings.sort((a, b) => Math.abs(area(b)) - Math.abs(area(a)));
    return { name: prefix + "-" + letter.codePointAt(0).toString(16).padStart(4, "0"), rings: scaled(largest) };
}

const font = file => { const b = readFileSync(`${fonts}/${file}`); return opentype.parse(b.buffer.slice(b.byteOffset, b.byteOffset + b.byteLength)); };
const [sans, serif] = [font("DejaVuSans-Bold.ttf"), font("DejaVuSerif-Bold.ttf")];
written("glyphs.json",
    "DejaVu fonts 2.37, DejaVuSans-Bold.ttf and DejaVuSerif-Bold.ttf, of Debian's package fonts-dejavu-core; names are Unicode code points",
    "Bitstream Vera and Arev licences; changes by DejaVu are in the public domain. See dejavu-notice.txt.",
    [...[..."ABCDGOPQRSU&@06890"].filter((l, i, all) => all.indexOf(l) === i).map(l => glyph(sans, "sans", l)), ...[..."ADeghpqt"].map(l => glyph(serif, "serif", l))]);
