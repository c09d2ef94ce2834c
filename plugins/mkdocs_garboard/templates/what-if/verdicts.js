// What a program comes to: results with their ranges, requirements with their margins, alarms.

const MOST_ROOTS = 12;
const VERDICT = { holds: "holds at the worst corner", nominal: "holds only at nominal", fails: "fails" };

function follow(made, values) {
  const done = work(made, values), cache = {}, whole = made.spread.length <= MOST_ROOTS;
  const here = made.asked.map((code) => code(done.cells, null));
  function at(over) {
    const own = whole ? made.spread : over, name = own.join();
    cache[name] = cache[name] || corners(made, values, own);
    return cache[name];
  }
  let next = 0;
  function take(count) {
    next += count;
    return next - count;
  }
  return {
    results: made.results.map((one) => result(one, done, here, at, take(1))),
    requirements: made.requirements.map((one) => judged(one, done, here, at, take(2))),
    alarms: made.alarms.map((one) => warned(one, done, here, at, take(3))).filter(Boolean)
  };
}

function result(one, done, here, at, place) {
  if (one.code === null) {
    return { lost: true };
  }
  const why = reason(done, one.code), value = here[place];
  if (why) {
    return { why: why };
  }
  const over = one.worst === undefined ? [] : one.worst;
  if (!over || !over.length) {
    return { value: value, low: over ? value : null, high: over ? value : null, ranged: !!over };
  }
  let low = Infinity, high = -Infinity, sound = true;
  const found = at(over);
  found.at[place].forEach((corner) => {
    sound = sound && Number.isFinite(corner);
    low = Math.min(low, corner);
    high = Math.max(high, corner);
  });
  if (sound && !kept(found.inner[place], low, high)) {
    return { value: value, low: null, high: null, ranged: false };
  }
  if (sound && high - low <= HAIR * Math.abs(value)) {
    low = high = value;
  }
  return { value: value, low: sound ? low : null, high: sound ? high : null, ranged: true };
}

// How far a comparison holds; a hair counts as nothing.
function margin(left, right, sign) {
  const gap = sign === ">" || sign === ">=" ? left - right : right - left;
  return Math.abs(gap) <= least(left, right) ? 0 : gap;
}
function holds(left, right, sign) {
  const own = margin(left, right, sign);
  return own > 0 || (own === 0 && (sign === "<=" || sign === ">="));
}

function judged(one, done, values, at, place) {
  if (one.left === null) {
    return { lost: true };
  }
  const why = reason(done, one.left) || reason(done, one.right);
  if (why) {
    return { why: why };
  }
  const left = values[place], right = values[place + 1];
  const here = holds(left, right, one.sign), over = one.worst === undefined ? [] : one.worst;
  const said = { left: left, right: right, here: here, ranged: !!over, margin: null, percent: null };
  let worst = [left, right];
  if (over && over.length) {
    const found = at(over), lefts = found.at[place], rights = found.at[place + 1];
    const more = one.sign === ">" || one.sign === ">=";
    const apart = (own, other) => more ? own - other : other - own;
    let lowest = Infinity, sound = true;
    lefts.forEach((corner, which) => {
      const gap = apart(corner, rights[which]);
      sound = sound && Number.isFinite(gap);
      if (gap < lowest) {
        lowest = gap;
        worst = [corner, rights[which]];
      }
    });
    const room = NOTICED * Math.max(Math.abs(worst[0]), Math.abs(worst[1]));
    said.ranged = !sound || found.inner[place].every((value, which) => apart(value, found.inner[place + 1][which]) >= lowest - room);
    worst = sound ? worst : null;
  }
  if (said.ranged && worst) {
    said.margin = margin(worst[0], worst[1], one.sign);
    said.percent = (one.unit && one.unit[2]) || worst[1] === 0 ? null : 100 * said.margin / Math.abs(worst[1]);
  }
  const firm = said.ranged && worst && holds(worst[0], worst[1], one.sign);
  said.verdict = here ? firm ? VERDICT.holds : VERDICT.nominal : VERDICT.fails;
  return said;
}

function warned(one, done, here, at, place) {
  const refused = (one.limits || []).concat(one.when.slice(1)).some((code) => reason(done, code));
  if (!refused && here[place + 2] === 1) {
    return one.text;
  }
  if (!refused && one.worst && one.worst.length) {
    const both = at(one.worst).at;
    for (let which = 0; which < both[place].length; which += 1) {
      const gap = both[place + 1][which] - both[place][which];
      if (Number.isFinite(gap) && gap > 0) {
        return one.text + " (at the worst corner)";
      }
    }
  }
  return "";
}
