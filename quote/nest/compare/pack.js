// Packs the sets on standard input with maxrects-packer and prints what each takes, sheets or the length of the roll:
// with the package's own defaults and turning allowed, and the best of every option it has and of several orders.
const { MaxRectsPacker, Rectangle } = require("maxrects-packer");

// Gap and edge are counted into the sizes, on both sides alike: a piece takes its gap along, and what is left of a sheet
// within its edges has room for one gap more.
function pack(set, logic, smart, order) {
  const grow = set.gap - 2 * set.edge;
  const height = set.h ? set.h + grow : 1 << 24;
  const packer = new MaxRectsPacker(set.w + grow, height, 0, {
    smart, pot: false, square: false, allowRotation: true, border: 0, logic,
  });
  const rects = set.rects.map(([w, h]) => new Rectangle(w + set.gap, h + set.gap)); // swaps its sides when turned
  if (order) rects.sort(order);
  if (order) rects.forEach((r) => packer.add(r));
  else packer.addArray(rects);
  if (!packer.bins.every((bin) => valid(bin.rects, set.w + grow, height))) return Infinity;
  if (set.h) return packer.bins.length;
  let used = 0;
  for (const bin of packer.bins) used += Math.max(...bin.rects.map((r) => r.y + r.height)) - grow;
  return used;
}

// valid tells an answer from one with pieces over the border or over one another, which would not count.
function valid(rects, w, h) {
  const apart = (a, b) => a.x >= b.x + b.width || b.x >= a.x + a.width || a.y >= b.y + b.height || b.y >= a.y + a.height;
  return rects.every((a, i) => a.x >= 0 && a.y >= 0 && a.x + a.width <= w && a.y + a.height <= h &&
    rects.slice(0, i).every((b) => apart(a, b)));
}

const orders = [
  null,
  (a, b) => b.height - a.height,
  (a, b) => b.width - a.width,
  (a, b) => b.width * b.height - a.width * a.height,
  (a, b) => Math.max(b.width, b.height) - Math.max(a.width, a.height),
];
const sets = JSON.parse(require("fs").readFileSync(0, "utf8"));
const EDGE = 1; // the package's default logic; 0 is by area
const out = sets.map((set) => {
  const plain = pack(set, EDGE, true, null);
  let best = plain;
  for (const logic of [0, EDGE])
    for (const smart of [true, false])
      for (const order of orders) best = Math.min(best, pack(set, logic, smart, order));
  return [plain, best].map((x) => (x === Infinity ? 0 : x));
});
process.stdout.write(JSON.stringify(out));
