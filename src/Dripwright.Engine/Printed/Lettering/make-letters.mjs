// Makes Data/letters.json: outlines of plain stroke letters for raised marks, on a grid of 6 units over the base line.
// Strokes are one unit wide, with eight-sided ends, joined by manifold-3d's flat shapes.
// In the folder Fittings:   node Lettering/make-letters.mjs path/to/manifold-3d
import {writeFileSync, mkdirSync} from 'node:fs';

const {default: load} = await import(`${process.argv[2]}/manifold.js`);
const {CrossSection, setup} = await load().then(m => (m.setup(), m));

// Centre lines, corner by corner, in units; the pen is one unit wide. Cells are 4 wide (3 between outer centre lines).
const strokes = {
  0: ['.5 1.5,.5 4.5,1.5 5.5,2.5 5.5,3.5 4.5,3.5 1.5,2.5 .5,1.5 .5,.5 1.5'],
  1: ['.5 4,2 5.5,2 .5', '.5 .5,3.5 .5'],
  2: ['.5 4.5,1.5 5.5,2.5 5.5,3.5 4.5,3.5 3.7,.5 .5,3.5 .5'],
  3: ['.5 5.5,3.5 5.5,1.8 3.3,2.5 3.3,3.5 2.3,3.5 1.5,2.5 .5,.5 .5'],
  4: ['2.6 .5,2.6 5.5,.5 2.3,.5 1.9,3.5 1.9'],
  5: ['3.5 5.5,.5 5.5,.5 3.3,2.5 3.3,3.5 2.3,3.5 1.5,2.5 .5,.5 .5'],
  6: ['3.5 5.5,1.5 5.5,.5 4.5,.5 1.5,1.5 .5,2.5 .5,3.5 1.5,3.5 2.3,2.5 3.3,.5 3.3'],
  7: ['.5 5.5,3.5 5.5,1.5 .5'],
  8: ['1.4 3,.5 3.9,.5 4.6,1.4 5.5,2.6 5.5,3.5 4.6,3.5 3.9,2.6 3,3.5 2.1,3.5 1.4,2.6 .5,1.4 .5,.5 1.4,.5 2.1,1.4 3,2.6 3'],
  9: ['.5 .5,2.5 .5,3.5 1.5,3.5 4.5,2.5 5.5,1.5 5.5,.5 4.5,.5 3.7,1.5 2.7,3.5 2.7'],
  A: ['.5 .5,.5 3.5,2 5.5,3.5 3.5,3.5 .5', '.5 2,3.5 2'],
  B: ['.5 3,.5 5.5,2.5 5.5,3.3 4.7,3.3 3.8,2.5 3,3.5 2,3.5 1.5,2.5 .5,.5 .5,.5 3,2.5 3'],
  C: ['3.5 4.5,2.5 5.5,1.5 5.5,.5 4.5,.5 1.5,1.5 .5,2.5 .5,3.5 1.5'],
  D: ['.5 .5,.5 5.5,2.2 5.5,3.5 4.2,3.5 1.8,2.2 .5,.5 .5,.5 3'],
  E: ['3.5 5.5,.5 5.5,.5 .5,3.5 .5', '.5 3,2.8 3'],
  F: ['3.5 5.5,.5 5.5,.5 .5', '.5 3,2.8 3'],
  G: ['3.5 4.5,2.5 5.5,1.5 5.5,.5 4.5,.5 1.5,1.5 .5,3.5 .5,3.5 2.7,2.2 2.7'],
  H: ['.5 .5,.5 5.5', '3.5 .5,3.5 5.5', '.5 3,3.5 3'],
  I: ['1 .5,3 .5', '1 5.5,3 5.5', '2 .5,2 5.5'],
  J: ['3.5 5.5,3.5 1.5,2.5 .5,1.5 .5,.5 1.5'],
  K: ['.5 .5,.5 5.5', '3.4 5.4,1 3,3.4 .6', '.5 3,1.2 3'],
  L: ['.5 5.5,.5 .5,3.5 .5'],
  M: ['.5 .5,.5 5.5,2 3.5,3.5 5.5,3.5 .5'],
  N: ['.5 .5,.5 5.5,3.5 .5,3.5 5.5'],
  O: ['.5 1.5,.5 4.5,1.5 5.5,2.5 5.5,3.5 4.5,3.5 1.5,2.5 .5,1.5 .5,.5 1.5'],
  P: ['.5 .5,.5 5.5,2.5 5.5,3.5 4.5,3.5 3.7,2.5 2.7,.5 2.7'],
  R: ['.5 .5,.5 5.5,2.5 5.5,3.5 4.5,3.5 3.7,2.5 2.7,.5 2.7', '1.7 2.7,3.4 .6'],
  S: ['3.5 5.5,1.5 5.5,.5 4.5,.5 4,1.5 3,2.5 3,3.5 2,3.5 1.5,2.5 .5,.5 .5'],
  T: ['.5 5.5,3.5 5.5', '2 5.5,2 .5'],
  U: ['.5 5.5,.5 1.5,1.5 .5,2.5 .5,3.5 1.5,3.5 5.5'],
  V: ['.5 5.5,2 .9,3.5 5.5'],
  W: ['.5 5.5,.5 .5,2 2.5,3.5 .5,3.5 5.5'],
  X: ['.6 .6,3.4 5.4', '.6 5.4,3.4 .6'],
  Y: ['.5 5.5,2 3.2,3.5 5.5', '2 3.2,2 .5'],
  Z: ['.5 5.5,3.5 5.5,.5 .5,3.5 .5'],
  '-': ['1 2.8,3 2.8'],
  '+': ['.7 2.8,3.3 2.8', '2 1.5,2 4.1'],
  '.': ['.5 .5,.51 .5'],
};

const pen = .5;
const across = (a, b) => {
  const d = [b[0] - a[0], b[1] - a[1]], l = Math.hypot(...d);
  return [d[0] / l * pen, d[1] / l * pen];
};
const bar = (a, b) => {
  const [x, y] = across(a, b);
  return new CrossSection([[[a[0] + y, a[1] - x], [b[0] + y, b[1] - x], [b[0] - y, b[1] + x], [a[0] - y, a[1] + x]]]);
};
// An eight-sided blob of the pen's width closes corners and ends.
const blob = p => CrossSection.circle(pen / Math.cos(Math.PI / 8), 8).rotate(22.5).translate(p);
const round = v => Math.round(v * 1000) / 1000;
const letters = {};
for (const [letter, lines] of Object.entries(strokes)) {
  const bars = lines.flatMap(line => {
    const p = line.split(',').map(c => c.split(' ').map(Number));
    return [...p.map(blob), ...p.slice(1).map((b, i) => bar(p[i], b))];
  });
  let flat = CrossSection.union(bars);
  flat = flat.simplify(.04);
  letters[letter] = flat.toPolygons().map(loop => loop.map(p => p.map(round)));
}
mkdirSync('Data', {recursive: true});
writeFileSync('Data/letters.json', '{\n' + Object.entries(letters).map(([k, v]) => `  ${JSON.stringify(k)}: ${JSON.stringify(v)}`).join(',\n') + '\n}\n');
