// The program that a page brings as data, walked number by number with the rules of the core. A part without
// an answer is NaN.

const HAIR = 1e-12; // the share of a value that counts as no difference
const FREE_AIR = 273.15 / 101325; // kelvin over pascal at the reference state of free air
const REASON = {
  divide: "it divides by zero", power: "a power has no real number", root: "there is no root of a value below 0",
  log: "there is no logarithm of a value that is not above 0", large: "it is too large to be worked out",
  rise: "the points of the table do not rise",
  table: "it lies outside the table, which is not continued past its ends"
};

// A part without an answer is NaN; why is kept in `run`, where somebody wants to know.
function lost(run, why) {
  if (run && run.why === undefined) {
    run.why = why;
  }
  return NaN;
}
function answered(value, run, why) {
  return Number.isFinite(value) ? value : lost(run, why);
}
function least(one, other) {
  return HAIR * Math.max(Math.abs(one), Math.abs(other));
}
function down(value) {
  return Math.floor(value + Math.abs(value) * HAIR);
}
function between(at, run) {
  let found = NaN, rising = true, last = at.length - 2;
  for (let i = 3; i <= last; i += 2) {
    rising = rising && at[i - 2] < at[i];
    if (Number.isNaN(found) && at[0] >= at[i - 2] && at[0] <= at[i]) {
      found = at[i - 1] + (at[0] - at[i - 2]) / (at[i] - at[i - 2]) * (at[i + 1] - at[i - 1]);
    }
  }
  for (let i = 2; i < at.length; i += 2) {
    rising = rising && Number.isFinite(at[i]);
  }
  return rising ? answered(found, run, REASON.table) : lost(run, REASON.rise);
}
function power(base, exponent) {
  return base === 1 ? 1 : Math.pow(base, exponent);
}

const PLAIN = {
  "+": (a, b) => a + b,
  "-": (a, b) => a - b,
  "*": (a, b) => a * b,
  "/": (a, b, run) => b === 0 ? lost(run, REASON.divide) : a / b,
  "^": (a, b, run) => answered(power(a, b), run, REASON.power),
  "minus": (a) => -a,
  "square": (a) => a * a,
  "<=": (a, b) => Number.isNaN(a - b) ? NaN : a - b <= least(a, b) ? 1 : 0,
  "<": (a, b) => Number.isNaN(b - a) ? NaN : b - a > least(a, b) ? 1 : 0,
  "sqrt": (a, b, run) => a < 0 ? lost(run, REASON.root) : Math.sqrt(a),
  "abs": (a) => Math.abs(a),
  "floor": (a) => down(a),
  "ceil": (a) => Math.ceil(a - Math.abs(a) * HAIR),
  "round": (a) => down(a + 0.5),
  "exp": (a, b, run) => answered(Math.exp(a), run, REASON.large),
  "log": (a, b, run) => answered(Math.log(a), run, REASON.log),
  "log10": (a, b, run) => answered(Math.log10(a), run, REASON.log),
  "sin": (a) => Math.sin(a),
  "cos": (a) => Math.cos(a),
  "tan": (a) => Math.tan(a)
};
const MANY = {
  "min": (at) => Math.min.apply(null, at),
  "max": (at) => Math.max.apply(null, at),
  "interpolate": between,
  "free_air": (at, run) => at[2] === 0 ? lost(run, REASON.divide) : at[0] * at[1] * FREE_AIR / at[2],
  "held": (at) => at.reduce((found, limit) => found * limit)
};

// What works a node out from the cells; built once, asked at every corner.
function build(node, words) {
  if (typeof node === "number") {
    return () => node;
  }
  const sign = node[0], parts = node.slice(1);
  if (!parts.length) {
    return (cells) => cells[sign];
  }
  if (sign === "within") {
    const inside = build(parts[0], words), why = words[parts[1]];
    return (cells, run) => inside(cells, run) === 1 ? 1 : lost(run, why);
  }
  const own = parts.map((part) => build(part, words)), one = own[0], two = own[1], three = own[2];
  if (sign === "if") {
    return (cells, run) => {
      const taken = one(cells, run);
      return Number.isNaN(taken) ? NaN : taken ? two(cells, run) : three(cells, run);
    };
  }
  const plain = PLAIN[sign], many = MANY[sign];
  if (plain) {
    return two ? (cells, run) => plain(one(cells, run), two(cells, run), run) : (cells, run) => plain(one(cells, run), 0, run);
  }
  return (cells, run) => many(own.map((part) => part(cells, run)), run);
}
