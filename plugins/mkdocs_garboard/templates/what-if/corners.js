// One program at some values: every cell of it, and what is asked at every corner of what is uncertain.

const BETWEEN = 9, ANYWHERE = 64; // points between the corners: of each input alone, of all at once
const STRIDE = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37].map((prime) => Math.sqrt(prime) % 1);
const NOTICED = 1e-9; // the share of a value that is worth a word

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
