// Numbers with units: one key whatever the unit, and what is found by it.

var ROUNDED = 0.001, MOST_ROUNDED = 0.01;

var GALLON_US = 3.785411784e-3, GALLON_IMP = 4.54609e-3, POUND = 0.45359237, FOOT = 0.3048;
var UNITS = {
  "pa": ["p", 1], "hpa": ["p", 100], "kpa": ["p", 1e3], "MPa": ["p", 1e6], "mpa": ["p", 1e6], "mbar": ["p", 100],
  "bar": ["p", 1e5], "psi": ["p", 6894.757], "psig": ["p", 6894.757, "g"], "psia": ["p", 6894.757, "a"],
  "barg": ["p", 1e5, "g"], "bara": ["p", 1e5, "a"], "atm": ["p", 101325], "kgf/cm2": ["p", 98066.5],
  "l": ["v", 1e-3], "ml": ["v", 1e-6], "m3": ["v", 1], "cm3": ["v", 1e-6], "ft3": ["v", FOOT * FOOT * FOOT],
  "gal": ["v", [GALLON_US, GALLON_IMP]], "galus": ["v", GALLON_US], "galimp": ["v", GALLON_IMP],
  "mm": ["l", 1e-3], "cm": ["l", 1e-2], "m": ["l", 1], "km": ["l", 1e3], "in": ["l", 0.0254], "ft": ["l", FOOT],
  "nmi": ["l", 1852], "g": ["m", 1e-3], "kg": ["m", 1], "t": ["m", 1e3], "lb": ["m", POUND], "oz": ["m", POUND / 16],
  "n": ["f", 1], "kn": ["f", 1e3], "lbf": ["f", 4.448222], "nm": ["q", 1], "lbfft": ["q", 1.355818],
  "w": ["w", 1], "kw": ["w", 1e3], "hp": ["w", 745.7], "j": ["e", 1], "kj": ["e", 1e3], "MJ": ["e", 1e6], "mJ": ["e", 1e-3], "mj": ["e", 1e6],
  "wh": ["e", 3600], "kwh": ["e", 3.6e6], "a": ["i", 1], "ma": ["i", 1e-3], "ka": ["i", 1e3], "v": ["u", 1], "mv": ["u", 1e-3],
  "kv": ["u", 1e3], "ah": ["c", 3600], "hz": ["z", 1], "rpm": ["r", 1], "rev/min": ["r", 1],
  "l/min": ["d", 1 / 60000], "l/s": ["d", 1e-3], "l/h": ["d", 1 / 3.6e6], "m3/h": ["d", 1 / 3600], "m3/min": ["d", 1 / 60], "m3/s": ["d", 1],
  "gal/min": ["d", [GALLON_US / 60, GALLON_IMP / 60]], "gpm": ["d", [GALLON_US / 60, GALLON_IMP / 60]],
  "galus/min": ["d", GALLON_US / 60], "galimp/min": ["d", GALLON_IMP / 60],
  "s": ["t", 1], "min": ["t", 60], "h": ["t", 3600], "%": ["x", 1],
  "degc": ["k", 1, "", 0], "c": ["k", 1, "", 0], "degf": ["k", 1 / 1.8, "", 32], "f": ["k", 1 / 1.8, "", 32],
  "starts": ["n", 1]
};
// What they are called where they are not written short.
var SHORT = Object.create(null);
[
  "pa pascal pascals", "bar bars", "mbar millibar millibars", "psi lb/in2 lbs/in2 pounds/in2", "kgf/cm2 kg/cm2", "atm atmosphere atmospheres",
  "l litre litres liter liters", "ml millilitre millilitres", "m3 cbm cube cubes", "gal gallon gallons",
  "mm millimetre millimetres millimeter millimeters", "cm centimetre centimetres centimeter centimeters", "m metre metres meter meters",
  "in inch inches", "ft foot feet", "nmi mile miles", "kg kilo kilos kilogram kilograms", "t ton tons tonne tonnes", "lb lbs pound pounds",
  "w watt watts", "kw kilowatt kilowatts", "hp horsepower", "a amp amps ampere amperes", "v volt volts", "mv millivolt millivolts",
  "ah amphour amphours", "hz hertz", "s sec secs second seconds", "min mins minute minutes", "h hr hrs hour hours", "l/min lpm",
  "% percent", "degc celsius degree degrees", "degf fahrenheit"
].forEach(function (line) {
  var names = line.split(" ");
  names.slice(1).forEach(function (name) { SHORT[name] = names[0]; });
});
function unitOf(name) {
  function short(one) { return SHORT[one] || one; }
  var low = name.toLowerCase();
  return [name, short(low), low.split("/").map(short).join("/")].filter(function (one) {
    return Object.prototype.hasOwnProperty.call(UNITS, one);
  }).map(function (one) { return UNITS[one]; })[0];
}
var QUANTITY = /(^|[^\w.,-])(-?\d+(?:[.,]\d+)?)\s*([a-z\u00b0%][a-z0-9\u00b0%_/.]*)(?:\s*\(\s*(g|a|d|n|s|anr)\s*\))?/gi;

// Every number with a unit in a text, as {kind, reading, from, at}; from says what it is counted from.
function quantities(text) {
  var found = [], match;
  var even = text.normalize("NFC").replace(/\u00b3/g, "3").replace(/\u00b2/g, "2").replace(/\^/g, "");
  QUANTITY.lastIndex = 0;
  while ((match = QUANTITY.exec(even))) {
    var name = match[3].replace(/\u00b0/g, "deg").replace(/[_.]/g, "");
    var unit = unitOf(name);
    QUANTITY.lastIndex = match.index + match[0].length;
    if (!unit) {
      continue;
    }
    var number = parseFloat(match[2].replace(",", "."));
    var factors = [].concat(unit[1]), half = 0.5 / Math.pow(10, (/[.,](\d+)$/.exec(match[2]) || ["", ""])[1].length);
    factors.forEach(function (factor) {
      found.push({
        kind: unit[0], reading: (number - (unit[3] || 0)) * factor,
        from: (match[4] || unit[2] || "").toLowerCase(), text: match[0], factor: factor, half: half * factor
      });
    });
  }
  return found;
}
function same(one, other) {
  if (one.kind !== other.kind || (one.from && other.from && one.from !== other.from)) {
    return false;
  }
  return Math.abs(one.reading - other.reading) <= spread(one, other) + 1e-12;
}
// A number in the unit that it has here is that number or another; 31.5 bar is not 31.6. Whoever reads another
// unit reads it rounded: 5.2 bar is 75.4 psi, and 75 on a gauge.
function spread(known, asked) {
  var largest = Math.max(Math.abs(known.reading), Math.abs(asked.reading));
  return known.factor === asked.factor ? 1e-6 * largest : Math.min(Math.max(ROUNDED * largest, asked.half), MOST_ROUNDED * largest);
}

function byNumber(index, asked, best) {
  asked.forEach(function (number) {
    var list = index.numbers[number.kind] || [], low = 0, high = list.length, middle;
    var least = number.reading - 2 * MOST_ROUNDED * Math.abs(number.reading) - 1e-12;
    while (low < high) {
      middle = (low + high) >> 1;
      if (list[middle].reading < least) { low = middle + 1; } else { high = middle; }
    }
    for (; low < list.length; low += 1) {
      var one = list[low];
      if (same({ kind: number.kind, reading: one.reading, from: one.from, factor: one.factor }, number)) {
        // The nearest of several that are near enough.
        var off = Math.abs(one.reading - number.reading) / (Math.abs(number.reading) || 1);
        // What nobody said the beginning of is read on a gauge, which counts from the atmosphere.
        var score = one.score - 2000 * off - (!number.from && one.from === "a" ? 60 : 0);
        if (score > (best.get(one.place) || 0)) { best.set(one.place, score); }
      } else if (one.reading > number.reading) {
        var most = Math.abs(one.reading - number.reading) > 2 * MOST_ROUNDED * Math.abs(one.reading) + 1e-9;
        if (most) { break; }
      }
    }
  });
}
function nearestNumber(index, asked) {
  var best = null;
  asked.forEach(function (number) {
    (index.numbers[number.kind] || []).forEach(function (one) {
      var entry = index.entries[one.place], far = Math.abs(one.reading - number.reading);
      if (entry.kind === "number" && !(number.from && one.from && one.from !== number.from) && (!best || far < best.far)) {
        best = { name: entry.keys[0], entry: entry, far: far };
      }
    });
  });
  return best;
}
