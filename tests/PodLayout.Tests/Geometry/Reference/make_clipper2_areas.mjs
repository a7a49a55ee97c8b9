// Areas that Clipper2 computes for the shapes of shapes.json, through its TypeScript port clipper2-ts 2.0.1 (npm).
// Writes clipper2-areas.json. Run in this folder: npm install --no-save clipper2-ts@2.0.1 && node make_clipper2_areas.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { Clipper, FillRule, JoinType, EndType } from 'clipper2-ts';

// Clipper2 works on whole numbers: micrometres here.
const SCALE = 1000;
const toPath = ring => ring.map(([x, y]) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) }));
const area = paths => Math.abs(Clipper.areaPaths(paths)) / SCALE ** 2;
const round = { widthMm: 90, heightMm: 50, radiusMm: 35, shrinkMm: 8 };

const areas = {};
for (const { name, outline, holes } of JSON.parse(readFileSync('shapes.json', 'utf8'))) {
  const rings = [outline, ...holes].map(toPath);
  const body = Clipper.difference([rings[0]], rings.slice(1), FillRule.NonZero);
  const half = [round.widthMm * SCALE / 2, round.heightMm * SCALE / 2];
  const rectangle = [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([x, y]) => ({ x: x * half[0], y: y * half[1] }));
  const bands = rings.flatMap(ring => Clipper.minkowskiSum(rectangle, ring, true));
  const band = Clipper.union(bands, [], FillRule.NonZero);
  const inset = mm => Clipper.inflatePaths(body, -mm * SCALE, JoinType.Round, EndType.Polygon, 2, 0.2);
  areas[name] = {
    rectangle: area(Clipper.difference(body, band, FillRule.NonZero)),
    disc: area(inset(round.radiusMm)),
    shrunk: area(inset(round.shrinkMm)),
  };
}
writeFileSync('clipper2-areas.json', JSON.stringify({ source: 'Clipper2 through clipper2-ts 2.0.1', areas }, null, 2) + '\n');
