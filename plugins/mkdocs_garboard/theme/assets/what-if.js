// What if: a reader changes an opened input, and its calculation follows, without any network. The
// page brings the program as data; here it is walked, number by number, with the rules of the core:
// the same comparisons, the same corners, the same rounding. The handbook's own numbers stay as they are.
(function () {
  "use strict";

  const HAIR = 1e-12; // the share of a value that counts as no difference
  const FREE_AIR = 273.15 / 101325; // kelvin over pascal at the reference state of free air
  const BETWEEN = 9, ANYWHERE = 64; // points between the corners: of each input alone, of all at once
  const STRIDE = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37].map((prime) => Math.sqrt(prime) % 1);
  const NOTICED = 1e-9; // the share of a value that is worth a word
  const MOST_ROOTS = 12, MOST_DIGITS = 12, MOST_TYPED = 15;
  const VERDICT = { holds: "holds at the worst corner", nominal: "holds only at nominal", fails: "fails" };
  const LOST = "not followed here";
  const NONE = "not computed";
  const REASON = {
    divide: "it divides by zero", power: "a power has no real number", root: "there is no root of a value below 0",
    log: "there is no logarithm of a value that is not above 0", large: "it is too large to be worked out",
    rise: "the points of the table do not rise",
    table: "it lies outside the table, which is not continued past its ends"
  };

  // ---- one node ----

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

  // ---- one program ----

  // The cells a node reads, in every branch.
  function reads(node, found) {
    if (typeof node === "object") {
      if (node.length === 1) {
        found.push(node[0]);
      }
      node.forEach((part) => reads(part, found));
    }
    return found;
  }

  function ready(program) {
    const inputs = program.inputs, steady = program.steady || [], steps = program.steps || [], words = program.words || [];
    const results = program.results || [], requirements = program.requirements || [], alarms = program.alarms || [];
    const codes = [];
    results.forEach((one) => codes.push(one.code));
    requirements.forEach((one) => codes.push(one.left, one.right));
    alarms.forEach((one) => codes.push(one.when[1], one.when[2], one.when));
    return {
      inputs: inputs, steady: steady, spread: program.spread || [], first: inputs.length + steady.length,
      steps: steps.map((step) => build(step, words)), needs: steps.map((step) => reads(step, [])),
      results: results, requirements: requirements, alarms: alarms,
      asked: codes.map((code) => build(code === null || code === undefined ? 0 : code, words))
    };
  }

  function ends(input, value) {
    const wide = input.share && value !== input.si ? Math.abs(value) * input.share : input.width;
    return [value - wide, value + wide];
  }

  // Every cell at the values as given: what cannot be worked out is NaN with the reason, and so is all
  // that rests on it, whatever branch it stands in; of several reasons the first counts.
  function work(made, values) {
    const cells = values.concat(made.steady.map((one) => one.si)), why = {};
    made.steps.forEach((step, at) => {
      const cell = made.first + at, run = {};
      const broken = made.needs[at].filter((need) => need in why);
      if (broken.length) {
        why[cell] = broken.map((need) => why[need]).reduce((a, b) => a.cell < b.cell ? a : b);
        cells.push(NaN);
        return;
      }
      const value = step(cells, run);
      if (run.why !== undefined || !Number.isFinite(value)) {
        why[cell] = { cell: cell, text: run.why || REASON.large };
      }
      cells.push(cell in why ? NaN : value);
    });
    return { cells: cells, why: why };
  }
  function reason(done, code) {
    const cell = typeof code === "object" ? code[0] : -1;
    return cell in done.why ? done.why[cell].text : "";
  }

  // What is asked comes to so much at every corner of some toleranced inputs, and last at the values as
  // given; and to so much at points between, which tell whether the corners are the worst there is.
  function corners(made, values, over) {
    const nominal = values.concat(made.steady.map((one) => one.si));
    const sides = over.map((cell) => cell < made.inputs.length
      ? ends(made.inputs[cell], values[cell])
      : [made.steady[cell - made.inputs.length].low, made.steady[cell - made.inputs.length].high]);
    const count = Math.pow(2, over.length), alone = BETWEEN * over.length;
    const at = made.asked.map(() => new Float64Array(count + 1)), inner = made.asked.map(() => new Float64Array(alone + ANYWHERE));
    const cells = nominal.concat(made.steps.map(() => 0));
    function run(found, place) {
      made.steps.forEach((step, own) => {
        cells[made.first + own] = step(cells, null);
      });
      made.asked.forEach((code, own) => {
        found[own][place] = code(cells, null);
      });
    }
    function part(own, share) {
      cells[over[own]] = sides[own][0] + share * (sides[own][1] - sides[own][0]);
    }
    for (let which = 0; which < count; which += 1) {
      for (let own = 0; own < over.length; own += 1) {
        cells[over[own]] = sides[own][which >> own & 1];
      }
      run(at, which);
    }
    for (let place = 0; place < alone + ANYWHERE; place += 1) {
      over.forEach((cell, own) => {
        if (place >= alone) {
          part(own, (place - alone + 1) * STRIDE[own] % 1);
        } else if (Math.floor(place / BETWEEN) === own) {
          part(own, (place % BETWEEN + 1) / (BETWEEN + 1));
        } else {
          cells[cell] = nominal[cell];
        }
      });
      run(inner, place);
    }
    over.forEach((cell) => {
      cells[cell] = nominal[cell];
    });
    run(at, count);
    return { at: at, inner: inner };
  }
  // Whether what lies between the corners stays within what they come to.
  function kept(inner, low, high) {
    const room = NOTICED * Math.max(Math.abs(low), Math.abs(high));
    return inner.every((value) => value >= low - room && value <= high + room);
  }

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

  // ---- a number as the handbook shows it ----

  function even(number) {
    const below = Math.floor(number), rest = number - below;
    return rest > 0.5 || (rest === 0.5 && below % 2 !== 0) ? below + 1 : below;
  }

  // The figures of a number, one by one, and the power of ten of the first.
  function figures(number) {
    const parts = Math.abs(number).toExponential().split("e");
    return { minus: number < 0, list: parts[0].replace(".", "").split("").map(Number), power: Number(parts[1]) };
  }
  // So many figures; `side` -1 rounds down, 1 up, 0 to the nearest, a half to the even one.
  function cut(own, digits, side) {
    const list = own.list.slice(0, digits), rest = own.list.slice(digits);
    while (list.length < digits) {
      list.push(0);
    }
    const any = rest.some((figure) => figure > 0), half = rest[0] === 5 && !rest.slice(1).some((figure) => figure > 0);
    let further = side === 0 ? rest[0] > 5 || (rest[0] === 5 && !half) || (half && list[digits - 1] % 2 === 1)
      : any && (side > 0) !== own.minus;
    let power = own.power;
    for (let at = digits - 1; further && at >= 0; at -= 1) {
      list[at] = (list[at] + 1) % 10;
      further = list[at] === 0;
    }
    if (further) {
      list.unshift(1);
      list.pop();
      power += 1;
    }
    return { minus: own.minus, list: list, power: power };
  }
  function point(list, places) {
    const text = list.join("");
    return places > 0 ? text.slice(0, text.length - places) + "." + text.slice(text.length - places) : text;
  }
  function rounded(number, digits, side) {
    if (number === 0) {
      return "0";
    }
    let own = figures(number);
    if (side) {
      own = cut(own, MOST_DIGITS, 0); // the last figures of a float are no reason
    }
    own = cut(own, digits, side);
    const sign = own.minus ? "-" : "";
    if (own.power <= -5 || own.power >= 7) {
      return sign + point(own.list, digits - 1) + "e" + own.power;
    }
    const list = own.list.slice();
    for (let at = own.power; at < 0; at += 1) {
      list.unshift(0);
    }
    while (list.length < own.power + 1) {
      list.push(0);
    }
    return sign + point(list, Math.max(0, digits - 1 - own.power));
  }

  function shown(number, digits, unit, whole, side) {
    let text;
    if (whole && Math.abs(number) < 1e15) {
      const own = side === -1 ? down(number) : side === 1 ? Math.ceil(number - Math.abs(number) * HAIR) : even(number);
      text = String(own === 0 ? 0 : own);
    } else {
      text = rounded(number, digits, side || 0);
    }
    return unit ? text + " " + unit : text;
  }
  function inUnit(si, unit) {
    return unit ? (si - unit[2]) / unit[1] : si;
  }
  function name(unit) {
    return unit ? unit[0] : "";
  }

  function showResult(one, said) {
    const digits = one.digits === undefined ? 3 : one.digits, unit = one.unit;
    const text = one.text && said.value === one.si ? one.text : shown(inUnit(said.value, unit), digits, name(unit), one.whole);
    return { text: text, range: showRange(one, said, Math.max(digits, 3)) };
  }
  function showRange(one, said, digits) {
    if (!said.ranged) {
      return "worst range not followed here";
    }
    if (said.low === null) {
      return "range unknown";
    }
    if (said.low === said.high) {
      return "";
    }
    const low = inUnit(said.low, one.unit), high = inUnit(said.high, one.unit);
    const whole = one.whole || (!name(one.unit) && low === even(low) && high === even(high));
    return shown(low, digits, "", whole, -1) + " to " + shown(high, digits, name(one.unit), whole, 1) + " at worst";
  }

  // Both sides with as many digits as it takes to tell them apart.
  function showSides(one, said) {
    const unit = one.unit, whole = one.whole || [false, false];
    const same = Math.abs(said.left - said.right) <= least(said.left, said.right);
    let texts = ["", ""];
    for (let digits = one.digits === undefined ? 3 : one.digits; digits <= MOST_DIGITS; digits += 1) {
      texts = [said.left, said.right].map((si, at) => shown(inUnit(si, unit), digits, name(unit), whole[at] && !name(unit)));
      if (same || texts[0] !== texts[1]) {
        break;
      }
    }
    return texts;
  }
  // A margin in per cent, never better than it is.
  function percentDown(share) {
    if (Math.abs(share) >= 100000) {
      return share > 0 ? "over 100000 %" : "under -100000 %";
    }
    const tidy = even(share * 1e6) / 1e6;
    return (Math.abs(tidy) >= 1 ? Math.floor(tidy) : Math.floor(tidy * 10) / 10) + " %";
  }
  function showVerdict(one, said) {
    if (!said.ranged) {
      return (said.here ? "Holds at these values" : "Fails") + "; the worst corner is not followed here.";
    }
    const digits = one.digits === undefined ? 3 : one.digits, apart = one.margin || ["", 1];
    const both = !!one.whole && one.whole[0] && one.whole[1];
    const text = said.margin === null ? "range unknown" : shown(said.margin / apart[1], digits, apart[0], both);
    const share = said.percent === null ? "" : " (" + percentDown(said.percent) + " of the limit)";
    const words = said.verdict.charAt(0).toUpperCase() + said.verdict.slice(1);
    return words + ". Margin at the worst corner: " + text + share + ".";
  }

  // ---- a number as a reader types it ----

  // Rounded once where the unit is a power of ten, as the core does it: 57 % is 0.57 and no hair more.
  function inSI(text, unit) {
    const parts = text.toLowerCase().split("e"), ten = Math.round(Math.log10(unit[1]));
    const exact = Number("1e" + ten) === unit[1];
    const number = exact ? Number(parts[0] + "e" + (Number(parts[1] || 0) + ten)) : Number(text) * unit[1];
    if (!unit[2]) {
      return number;
    }
    const places = [text, String(unit[2])].map((part) => (part.split(".")[1] || "").length);
    return exact && parts.length === 1 ? Number((number + unit[2]).toFixed(Math.max(places[0], places[1]))) : number + unit[2];
  }

  // The value in SI, or what is wrong with what stands in the field.
  function read(input, typed) {
    const text = typed.trim().replace(/\u2212/g, "-"), unit = input.unit;
    const beside = unit[0] ? "; the unit is " + unit[0] : "";
    if (!text) {
      return { fault: "Write a number" + beside + "." };
    }
    if (/^[\s\d.,+-]*,[\s\d.,+-]*$/.test(text)) {
      const once = text.replace(",", "."), such = /^[+-]?\d*\.\d+$/.test(once) ? "write " + once + ", with a point" : "write a point before decimals";
      return { fault: text + " has a comma in it: " + such + ", and nothing between thousands." };
    }
    if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?(\d|1[0-2]))?$/i.test(text) || text.replace(/\D/g, "").length > MOST_TYPED) {
      return { fault: text.slice(0, 30) + " is no number: write figures alone, such as " + input.text + beside + "." };
    }
    const number = Number(text), si = number === Number(input.text) ? input.si : inSI(text, unit);
    if (!Number.isFinite(si)) {
      return { fault: text + " is too large." };
    }
    if (input.whole && !Number.isInteger(number)) {
      return { fault: text + " is no whole number, and this is counted." };
    }
    if (typeof input.lowest === "number" && si < input.lowest) {
      return { fault: text + " is out of range: the lowest is " + input.least + "." };
    }
    if (typeof input.highest === "number" && si > input.highest) {
      return { fault: text + " is out of range: the highest is " + input.most + "." };
    }
    return { si: si, number: number };
  }

  window.garboardWhatIf = {
    ready: ready, follow: follow, read: read, shown: shown,
    showResult: showResult, showSides: showSides, showVerdict: showVerdict, VERDICT: VERDICT
  };

  // ---- the form ----

  function line(parent, kind, text, called) {
    const made = document.createElement(kind);
    made.textContent = text || "";
    if (called) {
      made.className = called;
    }
    parent.appendChild(made);
    return made;
  }
  function put(part, text) {
    if (part.textContent !== text) {
      part.textContent = text;
    }
  }
  function together(text) {
    return text.replace(/(\d) (?=\D)/g, "$1\u00a0");
  }
  // A number for a field: plain, without the last figures of a float.
  function tidy(number) {
    return String(Number(number.toPrecision(12)));
  }

  function field(box, input, id, card) {
    const part = line(box, "div", "", "field"), label = line(part, "label", input.label || input.name);
    if (!card && input.label) {
      line(label, "span", " (" + input.name + ")", "name");
    }
    const entry = line(part, "div", "", "entry"), slider = input.slider;
    const less = slider && line(entry, "button", "\u2212"), frame = line(entry, "div", "", "frame");
    const typed = line(frame, "input"), unit = line(frame, "span", input.unit[0], "unit");
    const more = slider && line(entry, "button", "+"), beside = line(part, "p", "", "quiet");
    const wide = slider && line(part, "input", "", "slider"), fault = line(part, "p", "", "fault");
    typed.id = label.htmlFor = id;
    label.id = id + "-label";
    unit.id = id + "-unit";
    beside.id = id + "-beside";
    fault.id = id + "-fault";
    fault.setAttribute("role", "alert");
    typed.type = "text";
    typed.inputMode = "decimal";
    typed.autocomplete = "off";
    typed.spellcheck = false;
    typed.setAttribute("aria-describedby", [unit.id, beside.id, fault.id].join(" "));
    beside.textContent = input.tolerance ? "counted with \u00b1 " + together(input.tolerance) : "";
    if (slider) {
      less.type = more.type = "button";
      less.setAttribute("aria-label", "Less: " + label.textContent);
      more.setAttribute("aria-label", "More: " + label.textContent);
      wide.type = "range";
      [wide.min, wide.max, wide.step] = slider.map(String);
      wide.setAttribute("aria-label", label.textContent + ", slider");
    }
    return { input: input, typed: typed, label: label, less: less, more: more, slider: wide, fault: fault };
  }

  function item(list, what, called) {
    const part = line(list, "li", "", called);
    line(part, "span", what, "what");
    return { part: part, said: line(part, "strong", "", "result"), more: line(part, "span", "", "range") };
  }
  function showItem(own, text, more) {
    own.part.classList.toggle("none", text === NONE || text === LOST);
    put(own.said, together(text));
    put(own.more, more ? together(more) : "");
  }

  // Follows one calculation; gives the means to tell what values come to, and to tell nothing.
  function answers(box, made, card) {
    const alarms = line(box, "div", "", "alarms"), list = line(box, "ul", "", "followed");
    alarms.setAttribute("aria-live", "polite");
    list.setAttribute("aria-live", "polite");
    const order = made.results.map((one, at) => at), results = [];
    if (card) {
      order.sort((a, b) => weight(made, b) - weight(made, a) || a - b);
    }
    order.forEach((at, place) => {
      const one = made.results[at], named = card || !one.label ? one.label || one.name : one.label + " (" + one.name + ")";
      results[at] = item(list, named, card && place === 0 ? "big" : one.answer ? "main" : "");
    });
    const required = made.requirements.map((one) => item(list, "Requirement: " + (one.label || one.text), "required"));

    function missing(own, said) {
      if (said.lost || said.why) {
        showItem(own, said.lost ? LOST : NONE, said.why ? ": " + said.why : "");
      }
      return said.lost || said.why;
    }
    return {
      nothing: () => {
        results.concat(required).forEach((own) => showItem(own, NONE));
        required.forEach((own) => own.part.classList.remove("fails"));
        put(alarms, "");
      },
      tell: (values) => {
        const found = follow(made, values);
        found.results.forEach((said, at) => {
          if (!missing(results[at], said)) {
            const text = showResult(made.results[at], said);
            showItem(results[at], text.text, text.range && " (" + text.range + ")");
          }
        });
        found.requirements.forEach((said, at) => {
          const own = required[at], one = made.requirements[at];
          own.part.classList.toggle("fails", !said.lost && (!!said.why || said.verdict !== VERDICT.holds));
          if (!missing(own, said)) {
            showItem(own, showVerdict(one, said), one.text + ": " + showSides(one, said).join(" " + one.sign + " "));
          }
        });
        put(alarms, found.alarms.map((text) => "Alarm: " + text + ".").join(" "));
      }
    };
  }

  function form(data, number) {
    const made = ready(JSON.parse(data.textContent)), card = data.classList.contains("card");
    const box = document.createElement("section"), id = "what-if-" + number;
    box.className = card ? "what-if card" : "what-if";
    if (!card) {
      line(box, "h3", "What if").id = id;
    }
    const fields = made.inputs.map((input, at) => field(box, input, id + "-" + at, card));
    box.setAttribute("aria-labelledby", card ? fields[0].label.id : id);
    const bar = line(box, "div", "", "whose"), whose = line(bar, "p"), back = line(bar, "button", "Reset");
    whose.setAttribute("role", "status");
    back.type = "button";
    back.setAttribute("aria-label", "Reset to the handbook\u2019s numbers");
    const out = answers(box, made, card);
    line(box, "p", "Nothing here is kept. Other pages, and paper, show the handbook\u2019s numbers.", "quiet");

    function update() {
      const said = fields.map((own) => read(own.input, own.typed.value));
      const differs = said.some((one, at) => one.fault || one.si !== fields[at].input.si);
      fields.forEach((own, at) => {
        put(own.fault, said[at].fault || "");
        own.typed.setAttribute("aria-invalid", String(!!said[at].fault));
      });
      box.classList.toggle("changed", differs);
      put(whose, differs ? "These are not the handbook\u2019s numbers." : "These are the handbook\u2019s numbers.");
      back.hidden = !differs;
      if (said.some((one) => one.fault)) {
        out.nothing();
      } else {
        out.tell(said.map((one) => one.si));
      }
    }
    function set(own, text) {
      own.typed.value = text;
      if (own.slider) {
        own.slider.value = text;
      }
    }
    function reset() {
      fields.forEach((own) => set(own, own.input.text));
      update();
    }
    function push(own, way) {
      const said = read(own.input, own.typed.value), ends = own.input.slider;
      const from = said.fault ? Number(own.input.text) : said.number, to = from + way * ends[2];
      set(own, tidy(Math.min(Math.max(to, Math.min(from, ends[0])), Math.max(from, ends[1]))));
      update();
    }
    fields.forEach((own) => {
      own.typed.addEventListener("input", () => {
        if (own.slider && !read(own.input, own.typed.value).fault) {
          own.slider.value = own.typed.value;
        }
        update();
      });
      if (own.slider) {
        own.slider.addEventListener("input", () => {
          own.typed.value = tidy(Number(own.slider.value));
          update();
        });
        own.less.addEventListener("click", () => push(own, -1));
        own.more.addEventListener("click", () => push(own, 1));
      }
    });
    back.addEventListener("click", () => {
      reset();
      fields[0].typed.focus();
    });
    data.parentNode.insertBefore(box, data.nextSibling);
    reset();
  }
  // On a card what is required stands first, then what it was made for.
  function weight(made, at) {
    const one = made.results[at], cell = String(one.code);
    return (made.requirements.some((each) => String(each.left) === cell) ? 2 : 0) + (one.answer ? 1 : 0);
  }

  let forms = 0;
  function open(page) {
    page.querySelectorAll("script.what-if").forEach((data) => {
      form(data, forms);
      forms += 1;
    });
  }
  document.addEventListener("garboard:page", (event) => open(event.target)); // one more page of the one file
  open(document);
})();
