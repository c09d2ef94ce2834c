// Find: names first, then numbers in any unit, then words. A name or a number is never guessed; a
// word of five letters and more forgives one letter. The list of what can be found is a script too,
// loaded when the box is first entered, so that it works from a folder without any network.
//
// In a document of another build, set before this script runs: `garboardIndex`, and nothing is loaded;
// `garboardWay(path, anchor)`, which gives the way to a page ("id/SA-RV-001") and a place on it ("" for
// none), both as they stand in an address.
(function () {
  "use strict";

  var MOST = 30;
  var AT_ONCE = 8;
  var ROUNDED = 0.001, MOST_ROUNDED = 0.01;

  // ---- folding ----

  var BARE = /^[\x20-\x7e]*$/;
  function plain(text) {
    if (BARE.test(text)) { // most are: nothing to fold but the letters
      return text.toLowerCase().replace(/['`]/g, "");
    }
    return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase()
      .replace(/[\u2019\u2018'`]/g, "").replace(/\u00b3/g, "3").replace(/\u00b2/g, "2").replace(/[\u00a0\u202f]/g, " ");
  }
  function key(text) {
    return plain(text).replace(/[\s\-./_\u2010-\u2015]+/g, "");
  }
  function split(text) {
    return plain(text).match(/[a-z0-9\u00df-\uffff]+/g) || [];
  }
  var NAME = /[a-z]{2}-[a-z]{2}-\d{3}/g;
  // A word without its endings: `batteries`, `batterys` and `battery` are one, `charging` and `charge`. Never with digits.
  var STEMS = new Map();
  function stem(word) {
    if (!STEMS.has(word)) { STEMS.set(word, word.length < 4 || /\d/.test(word) ? word : cutBack(word)); }
    return STEMS.get(word);
  }
  function cutBack(word) {
    var one = word.replace(/ies$/, "y").replace(/([^s])s$/, "$1");
    var cut = one.replace(/(?:ing|ed|ion)$/, "");
    if (cut.length >= 3 && /[aeiouy]/.test(cut)) { one = cut; }
    return one.replace(/e$/, "").replace(/([b-df-hj-np-tv-z])\1$/, "$1");
  }
  // A word as it is heard: `resever` and `receiver` are one, `gage` and `gauge`.
  function sound(word) {
    return word[0] + word.slice(1).replace(/ph/g, "f").replace(/gh/g, "").replace(/ck|q/g, "k").replace(/c(?=[eiy])/g, "s").replace(/c/g, "k")
      .replace(/g(?=[eiy])/g, "j").replace(/z/g, "s").replace(/[aeiouyhw]/g, "").replace(/(.)\1+/g, "$1");
  }
  // A name without the noughts before its number: `SA-RV-001` is `sarv1`.
  function unpadded(folded) {
    return folded.replace(/^([a-z]+)0+(?=\d)/, "$1");
  }

  // ---- numbers with units: one key whatever the unit ----

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

  // ---- the list, made ready once ----

  var IN_FULL = /^[a-z]{4}\d{3}$/;
  var TITLE = 1, NAMES = 0.8, AROUND = 0.45, TEXT = 0.35;
  // Beside their names these carry what else they are called; the others carry what they tell.
  var OWN = { part: true, "spare part": true, word: true, pipe: true };
  // What is opened in a hurry comes first of what fits as well; the manual of the tool comes last.
  var BONUS = {
    alarm: 60, fault: 60, procedure: 50, part: 25, hazard: 25, "spare part": 10, register: 20, place: 5,
    isolation: -60, value: -40, rule: -120, method: -60, manual: -40, "list of pages": -200,
    "plan line": -10, test: -10, "work package": -10, "open item": -10, "job sheet": -30, "quick card": -30, word: -200
  };
  // They count for little, and are no reason to say that a word was not found.
  var ASKING = { up: 0.35, out: 0.35, down: 0.35, over: 0.35 };
  ("a an and any are as at be can could did do does for from get got had has have how i if in is it its just many me much my" +
    " of often on only or our please should so some someone somebody that the them then there they this to us was we were what when" +
    " where which who why will with would you your").split(" ").forEach(function (word) { ASKING[word] = 0.08; });
  // Who writes one of these tells that something is wrong, and not what he wants to read about.
  var TROUBLE = Object.create(null);
  ("cant dead didnt doesnt dont dying empty failed fails flat gone isnt keeps lost never no not nothing smell smells smoke stopped stuck too wont")
    .split(" ").forEach(function (word) { TROUBLE[word] = true; });

  // What is said for the same everywhere, in the order in which the words of the crew stand.
  var ANYWHERE = [[["does", "not"], ["wont"], ["doesnt"], ["dont"], ["didnt"], ["isnt"], ["cant"]],
    [["low"], ["no"]], [["1"], ["one"]], [["2"], ["two"]], [["3"], ["three"]]];

  function push(map, name, what) {
    var known = map.get(name);
    if (known) {
      if (known[known.length - 1] !== what) { known.push(what); }
    } else {
      map.set(name, [what]);
    }
  }
  function note(words, word, place, weight) {
    var known = words.get(word);
    if (!known) {
      words.set(word, [place, weight]);
    } else if (known[known.length - 2] !== place) {
      known.push(place, weight);
    } else if (known[known.length - 1] < weight) {
      known[known.length - 1] = weight;
    }
  }

  function ready(index) {
    var said = index.said, words = new Map(), names = new Map(), titles = new Map(), cited = new Map();
    var numbers = {}, crew = [], known = [], parts = new Map(), tails = new Map(), short = new Map(), stems = new Map(), sounds = new Map();
    var spelt = said.map(split);
    function count(found, place, score) {
      found.forEach(function (one) {
        (numbers[one.kind] = numbers[one.kind] || []).push({ reading: one.reading, from: one.from, factor: one.factor, place: place, score: score });
      });
    }
    var entries = index.list.map(function (record, place) {
      var keys = record[6] || [], kind = said[record[1]];
      var entry = {
        title: record[0], kind: kind, system: said[record[2]], review: said[record[3]], path: record[4],
        anchor: record[5] === 1 ? keys[0] : record[5] || "", keys: keys, text: record[8] || "", digest: record[9] || "",
        place: place, long: 0
      };
      entry.address = entry.path + ".html" + (entry.anchor ? "#" + entry.anchor : "");
      var own = split(entry.title), i;
      entry.long = own.length;
      // The last words of what a part is called say what it is: `Starting-air compressor`, `Air receiver 1`.
      if (kind === "part") {
        for (i = own.length; i > 0 && /\d/.test(own[i - 1]); i -= 1) { continue; }
        push(tails, own[i - 1] || "", place);
        if (i > 1) { push(tails, own[i - 2] + own[i - 1], place); }
      }
      own.forEach(function (word) { note(words, word, place, TITLE); });
      keys.forEach(function (name) {
        var folded = key(name);
        push(names, folded, place);
        known.push([name, folded, place]);
        if (IN_FULL.test(folded)) { push(parts, folded.slice(2), place); }
        if (/\d$/.test(folded)) {
          push(short, unpadded(folded), place);
          if (/^\w+-\w+-\w+$/.test(name)) { push(short, unpadded(key(name.slice(name.indexOf("-")))), place); }
        }
        if (kind !== "value") { split(name).forEach(function (word) { note(words, word, place, NAMES); }); }
      });
      push(titles, key(entry.title), place);
      if (kind !== "value" && kind !== "number") {
        spelt[record[1]].forEach(function (word) { note(words, word, place, AROUND); });
        spelt[record[2]].forEach(function (word) { note(words, word, place, AROUND); });
      }
      if (record[7]) { split(record[7]).forEach(function (word) { note(words, word, place, OWN[kind] ? NAMES * 0.8 : TEXT); }); }
      if (record[8]) { split(record[8]).forEach(function (word) { note(words, word, place, TEXT); }); }
      if (!/^id\//.test(entry.path)) { split(entry.path).forEach(function (word) { note(words, word, place, TEXT); }); }
      if (kind === "number") {
        count(quantities(keys[0]), place, 745);
      } else if (kind === "value") {
        count(quantities(entry.title.split(":")[0]), place, 700);
      } else {
        for (i = 0; i < keys.length; i += 1) { if (/\d/.test(keys[i])) { count(quantities(keys[i]), place, 700); } }
        [entry.title, record[7], record[8]].forEach(function (text) {
          if (text && /\d/.test(text)) {
            count(quantities(text), place, 300);
            (plain(text).match(NAME) || []).forEach(function (name) { push(cited, key(name), place); });
          }
        });
      }
      if (kind === "word") { crew.push(keys.map(split)); }
      return entry;
    });
    crew = crew.concat(ANYWHERE);
    var list = Array.from(words.keys()).sort(), long = {};
    list.forEach(function (word) {
      if (word.length < 4 || /\d/.test(word)) { return; }
      (long[word.length] = long[word.length] || []).push(word);
      push(stems, stem(word), word);
      push(sounds, sound(word), word);
    });
    Object.keys(numbers).forEach(function (kind) {
      numbers[kind].sort(function (one, other) { return one.reading - other.reading; });
    });
    return {
      entries: entries, words: words, list: list, long: long, names: names, folded: Array.from(names.keys()).sort(),
      titles: titles, headed: Array.from(titles.keys()).sort(), cited: cited, numbers: numbers, crew: crew, known: known, parts: parts,
      tails: tails, short: short, stems: stems, sounds: sounds
    };
  }

  // ---- how far two words are apart, as far as it matters: nothing, one letter, more ----

  // One letter more, less or other, or two changed round.
  function oneApart(one, other) {
    var shorter = one.length <= other.length ? one : other, longer = shorter === one ? other : one;
    var first = 0, most = shorter.length;
    while (first < most && shorter[first] === longer[first]) { first += 1; }
    if (longer.length > most) {
      return shorter.slice(first) === longer.slice(first + 1);
    }
    return shorter.slice(first + 1) === longer.slice(first + 1) ||
      (shorter[first] === longer[first + 1] && shorter[first + 1] === longer[first] && shorter.slice(first + 2) === longer.slice(first + 2));
  }
  function apart(one, other, limit) {
    if (Math.abs(one.length - other.length) > limit) {
      return limit + 1;
    }
    var before = null, last = [], row, i, j;
    for (j = 0; j <= other.length; j += 1) {
      last.push(j);
    }
    for (i = 1; i <= one.length; i += 1) {
      row = [i];
      var least = i;
      for (j = 1; j <= other.length; j += 1) {
        var cost = one[i - 1] === other[j - 1] ? 0 : 1;
        var value = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + cost);
        if (before && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) {
          value = Math.min(value, before[j - 2] + 1);
        }
        row.push(value);
        least = Math.min(least, value);
      }
      if (least > limit) {
        return limit + 1;
      }
      before = last;
      last = row;
    }
    return last[other.length];
  }

  // ---- asking ----

  // The form of a tag or id without its system.
  var IN_PART = /^[a-z]{2}\d{1,3}$/;
  // What the square code on a card or a label holds: name, revision, digest.
  var CARD = /(?:^|[\s/])([a-z]{2}-[a-z]{2}-\d{3})(?:\.html)?(?:\s+r(\S+))?[\s#]+([0-9a-f]{8,64})(?=\s|$)/i;

  // Where a text begins with another, in a sorted list.
  function starting(list, text, then) {
    var low = 0, high = list.length, middle;
    while (low < high) {
      middle = (low + high) >> 1;
      if (list[middle] < text) { low = middle + 1; } else { high = middle; }
    }
    for (; low < list.length && list[low].indexOf(text) === 0; low += 1) { then(list[low]); }
  }

  var HURRY = { alarm: true, fault: true, procedure: true }, TOOL = { rule: true, method: true, manual: true };
  // How well a name fits: the whole of it, or its beginning. Numbers are found as numbers.
  // Of names that begin so, the one of which most was typed comes first.
  function ofName(kind, whole, typed) {
    if (TOOL[kind]) { return whole ? 950 : 500; }
    // A value is named after its calculation or part: it stands behind them, and a word alone is not its name.
    if (kind === "value") { return whole ? 1000 : /[\d.]/.test(typed) ? 640 : 0; }
    if (kind === "word") { return whole ? 805 : 560; }
    if (kind === "place") { return whole ? 806 : 610; }
    return kind === "number" ? 0 : whole ? 1000 : HURRY[kind] ? 812 : 800;
  }
  function ofTitle(kind, whole) {
    if (TOOL[kind]) { return whole ? 850 : 480; }
    if (kind === "value" || kind === "number" || kind === "word" || kind === "spare part") { return 0; }
    return (whole ? 900 : HURRY[kind] ? 811 : kind === "hazard" ? 806 : kind === "register" ? 802 : 620) + (BONUS[kind] || 0) / 100;
  }
  // `SA-RV-1` and `RV 1` are SA-RV-001: the noughts before a number are no part of it.
  function padded(folded) {
    var found = /^([a-z]{2}|[a-z]{4})0*(\d{1,3})$/.exec(folded);
    return found ? found[1] + ("00" + found[2]).slice(-3) : "";
  }

  function byName(index, folded, typed, best) {
    function raise(place, score) {
      if (score > (best.get(place) || 0)) { best.set(place, score); }
    }
    function lead(map, name, score) {
      (map.get(name) || []).forEach(function (place) { raise(place, score); });
    }
    lead(index.cited, folded, 500);
    lead(index.tails, folded, 803);
    var full = padded(folded);
    if (/^[a-z]+\d+$/.test(folded)) { lead(index.short, unpadded(folded), full.length === 7 ? 795 : 790); }
    if (IN_PART.test(folded)) {
      index.parts.forEach(function (places, name) {
        if (name.indexOf(folded) === 0) { lead(index.parts, name, 780); }
      });
    }
    if (folded.length > 1) {
      starting(index.headed, folded, function (title) {
        index.titles.get(title).forEach(function (place) {
          raise(place, ofTitle(index.entries[place].kind, title === folded) + folded.length / title.length);
        });
      });
      starting(index.folded, folded, function (name) {
        index.names.get(name).forEach(function (place) {
          raise(place, ofName(index.entries[place].kind, name === folded, typed) + folded.length / name.length);
        });
      });
    }
    // What the crew says leads on to what is opened in a hurry under the word of the trade.
    (index.names.get(folded) || []).forEach(function (place) {
      var entry = index.entries[place], word = key(entry.title);
      if (entry.kind === "word" && word !== folded) {
        var urgent = function (other) { if (HURRY[index.entries[other].kind]) { raise(other, 811); } };
        starting(index.headed, word, function (title) { index.titles.get(title).forEach(urgent); });
        // An alarm is headed by the panel's words; what it is called otherwise is one of its names.
        starting(index.folded, word, function (name) {
          index.names.get(name).forEach(function (other) { if (index.entries[other].kind === "alarm") { urgent(other); } });
        });
      }
    });
    // What is written just as it was typed comes before what is only folded alike.
    best.forEach(function (score, place) {
      var entry = index.entries[place];
      if (score >= 900 && entry.keys.concat(entry.title).some(function (name) { return name.toLowerCase() === typed; })) {
        best.set(place, score + 50);
      }
    });
  }

  // A name that has no page of its own is looked for as it stands in what is shown of each page.
  function byText(index, typed, best) {
    index.entries.forEach(function (entry) {
      if (!best.has(entry.place) && (entry.title + " " + entry.text).toLowerCase().split(/[^\w.\/-]+/).indexOf(typed) >= 0) {
        best.set(entry.place, 400);
      }
    });
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

  // What one word finds: place to share of its field, and what the word weighs.
  function byWord(index, word, last) {
    var name = word + (last ? " " : "");
    if (!index.seen.has(name)) { index.seen.set(name, lookedUp(index, word, last)); }
    return index.seen.get(name);
  }
  function lookedUp(index, word, last) {
    var found = new Map(), digits = /\d/.test(word);
    function take(known, share) {
      var list = index.words.get(known);
      for (var i = 0; i < list.length; i += 2) {
        var score = list[i + 1] * share;
        if (score > (found.get(list[i]) || 0)) { found.set(list[i], score); }
      }
    }
    if (word.length > (last ? 1 : 2)) { // the last word may not be written out yet
      starting(index.list, word, function (known) {
        take(known, known === word ? 1 : known.length - word.length < 3 ? 0.85 : 0.6);
      });
    } else if (index.words.has(word)) {
      take(word, 1);
    }
    var begun = found.size > 0;
    (index.stems.get(stem(word)) || []).forEach(function (known) { if (known !== word) { take(known, 0.9); } });
    if (!digits && word.length >= 5) {
      [-1, 0, 1].forEach(function (more) {
        (index.long[word.length + more] || []).forEach(function (known) {
          if (known !== word && oneApart(word, known)) { take(known, 0.55); }
        });
      });
    }
    if (!begun && word.length >= 4 && /^[^\d]*[aeiouy][^\d]*$/.test(word)) {
      (index.sounds.get(sound(word)) || []).forEach(function (known) { take(known, 0.5); });
    }
    if (digits) {
      (index.names.get(key(word)) || []).concat(index.short.get(unpadded(word)) || []).forEach(function (place) {
        found.set(place, Math.max(found.get(place) || 0, /^[a-z]/.test(word) ? TITLE : NAMES));
      });
    }
    var asking = Object.prototype.hasOwnProperty.call(ASKING, word);
    var rare = Math.log(1 + index.entries.length / (1 + found.size));
    return { found: found, weight: asking ? rare * ASKING[word] : rare, asking: asking };
  }

  // The same question in the words of the trade and of the crew, one phrase changed at a time, and all of
  // the crew's phrases at once; then with two words written as one, or one as two.
  function otherWords(index, words) {
    var made = [], all = words;
    function instead(some, way, by) {
      var at = whereIn(some, way);
      return at < 0 ? some : some.slice(0, at).concat(by, some.slice(at + way.length));
    }
    index.crew.forEach(function (ways) {
      ways.forEach(function (way, at) {
        if (whereIn(words, way) < 0) { return; }
        (at ? ways.slice(0, 1) : ways.slice(1)).forEach(function (by) { made.push(instead(words, way, by)); });
        if (at) { all = instead(all, way, ways[0]); }
      });
    });
    made = made.slice(0, MOST_WAYS);
    if (made.length > 1 && all !== words) { made.push(all); }
    return made.concat(joined(index, words));
  }
  // Where some words stand among others, endings aside.
  function whereIn(words, way) {
    for (var at = 0; way.length && at + way.length <= words.length; at += 1) {
      if (way.every(function (word, on) { return stem(words[at + on]) === stem(word); })) { return at; }
    }
    return -1;
  }
  function joined(index, words) {
    var made = [];
    words.forEach(function (word, at) {
      var both = word + words[at + 1], cut;
      function instead(count, by) { made.push(words.slice(0, at).concat(by, words.slice(at + count))); }
      if (at + 1 < words.length && both.length > 5 && index.words.has(both)) { instead(2, [both]); }
      for (cut = 3; !index.words.has(word) && cut <= word.length - 3; cut += 1) {
        if (index.words.has(word.slice(0, cut)) && index.words.has(word.slice(cut))) { instead(1, [word.slice(0, cut), word.slice(cut)]); }
      }
    });
    return made.slice(0, MOST_WAYS);
  }
  // `pr 9` between other words is one word, if anything is called so.
  function withNames(index, words) {
    var made = [];
    words.forEach(function (word) {
      var last = made.length - 1, whole = last >= 0 ? made[last] + word : "";
      var name = /^[a-z]{1,4}\d{1,3}$/.test(whole) && index.short.has(unpadded(whole));
      if (name) { made[last] = whole; } else { made.push(word); }
    });
    return made;
  }

  var MOST_WAYS = 6;
  var NUMBER = 7, MOST_BY_WORD = 740, LEAST_PARTLY = 200;
  function byWords(index, words, numbers, asked, share, best, missed) {
    var all = words.map(function (word, at) { return byWord(index, word, at === words.length - 1); });
    function total(some) {
      return all.reduce(function (sum, one) { return sum + (some(one) ? one.weight : 0); }, asked ? NUMBER : 0);
    }
    var whole = total(function () { return true; }), asks = total(function (one) { return !one.asking; });
    var sums = new Map(), met = new Map(), headed = new Map(), trouble = words.some(function (word) { return TROUBLE[word]; });
    function add(place, weight, part, asking) {
      sums.set(place, (sums.get(place) || 0) + weight * part);
      if (!asking) { met.set(place, (met.get(place) || 0) + weight); }
      if (part > NAMES) { headed.set(place, (headed.get(place) || 0) + 1); }
    }
    all.forEach(function (one) {
      one.found.forEach(function (part, place) { add(place, one.weight, part, one.asking); });
    });
    if (asked) {
      numbers.forEach(function (score, place) { add(place, NUMBER, score / 745, false); });
    }
    sums.forEach(function (sum, place) {
      var entry = index.entries[place], cover = asks ? (met.get(place) || 0) / asks : 1;
      // A title that says little else than what was asked for is nearer than a long one.
      var spare = Math.max(0, entry.long - (headed.get(place) || 0));
      var hurried = trouble && (HURRY[entry.kind] || entry.kind === "hazard") ? 60 : 0;
      var score = share * (MOST_BY_WORD * (sum / whole) * (0.4 + 0.6 * cover) + (BONUS[entry.kind] || 0) + hurried) - 15 * Math.min(spare, 6);
      score = Math.min(score, 790);
      if (score > (best.get(place) || 0)) {
        best.set(place, Math.max(score, 1));
        missed.set(place, cover < 0.8);
      }
    });
  }

  function nearest(index, folded) {
    var best = null;
    index.known.forEach(function (one) {
      var entry = index.entries[one[2]];
      if (entry.kind === "value" || entry.kind === "number" || entry.kind === "place" || !/\d/.test(one[0]) || /\s/.test(one[0]) ||
          Math.abs(one[1].length - folded.length) > 3) {
        return;
      }
      var far = apart(folded, one[1], 3);
      if (far > 3 || (best && far > best.far)) { return; }
      var made = { name: one[0], entry: entry, far: far, alike: alike(folded, one[1]) };
      if (!best || far < best.far || made.alike > best.alike || (made.alike === best.alike && made.name < best.name)) {
        best = made;
      }
    });
    return best;
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
  function alike(one, other) {
    var at = 0;
    while (at < one.length && one[at] === other[at]) {
      at += 1;
    }
    return at;
  }

  function order(one, other) {
    return other.score - one.score || (one.entry.title < other.entry.title ? -1 : one.entry.title > other.entry.title ? 1 :
      one.entry.address < other.entry.address ? -1 : one.entry.address > other.entry.address ? 1 : one.entry.place - other.entry.place);
  }

  // What a card says of itself, held against this copy.
  function ofCard(index, card) {
    var places = index.names.get(key(card[1]));
    if (!places) {
      return null;
    }
    var entry = index.entries[places[0]], signs = card[3].toLowerCase();
    var words = !entry.digest ? "this copy cannot tell whether the card or label is up to date" :
      signs.indexOf(entry.digest) === 0 ? "the card fits this copy" :
      "THE CARD WAS PRINTED FROM ANOTHER TEXT than this copy holds: go by this page and have the card replaced";
    return { results: [{ entry: entry, score: 1000 }], all: 1, note: words, near: null, card: true };
  }

  function find(index, question) {
    index.seen = new Map(); // the same words are asked for in several ways
    question = question.replace(/\s+per\s+/gi, "/");
    var typed = question.trim().toLowerCase();
    var folded = key(question);
    if (!folded) {
      return { results: [], all: 0, note: "", near: null };
    }
    var card = CARD.exec(question), told = card && ofCard(index, card);
    if (told) {
      return told;
    }
    var asked = quantities(question), rest = question;
    asked.forEach(function (quantity) { rest = rest.replace(quantity.text, " "); });
    var words = withNames(index, split(rest)), best = new Map(), numbers = new Map(), missed = new Map();
    var named = !asked.length && /\d/.test(folded) &&
      (/^[a-z]+[-./_]?[a-z]*[-./_]?\d[\w-]*$/.test(typed) || /^[a-z]{4}\s?\d[a-z0-9]{2}$/.test(typed) || /^[a-z]{2}[\s-]+[a-z]{2}[\s-]+\w+$/.test(typed));
    byName(index, folded, typed, best);
    var bare = words.filter(function (word) { return !Object.prototype.hasOwnProperty.call(ASKING, word); }).join("");
    if (bare.length > 3 && bare !== folded && !named && !asked.length) { // `where is the bilge pump` asks for the bilge pump
      var other = new Map();
      byName(index, bare, typed, other);
      other.forEach(function (score, place) {
        // Whoever asks in a sentence wants the thing and not the word.
        best.set(place, Math.max(best.get(place) || 0, score - (index.entries[place].kind === "word" ? 20 : 10)));
      });
    }
    if (named) { // parts of a name find nothing
      if (!best.size) { byText(index, typed, best); }
      words = [];
    } else if (IN_PART.test(folded) && best.size) {
      words = [];
    } else {
      if (asked.length) { byNumber(index, asked, numbers); }
      if (words.length) {
        byWords(index, words, numbers, asked.length, 1, best, missed);
        otherWords(index, words).forEach(function (other) {
          byWords(index, other, numbers, asked.length, 0.95, best, missed);
        });
      } else {
        numbers.forEach(function (score, place) { best.set(place, Math.max(score, best.get(place) || 0)); });
      }
    }
    var results = [], partly = [];
    best.forEach(function (score, place) {
      if (score > 0) { (missed.get(place) ? partly : results).push({ entry: index.entries[place], score: score, partly: missed.get(place) }); }
    });
    if (results.length && !asked.length && !named) { // what lacks a word may still be nearer than what has it far down in its text
      results = results.concat(partly.filter(function (one) { return one.score >= LEAST_PARTLY; }));
    }
    var said = "", near = null;
    // Has the form of a name, or the one word asked for holds a digit: then nothing like it is offered
    // as an answer, only as the nearest name there is.
    var single = !asked.length && /\d/.test(folded) && (words.length < 2 || named);
    if (!results.length && single) {
      near = nearest(index, folded);
      said = /[a-z]/.test(folded) ? "no such tag" : "no such number";
      partly = [];
    } else if (!results.length && asked.length && (!words.length || !numbers.size)) {
      said = "no such number";
      near = nearestNumber(index, asked);
      partly = words.length ? partly : [];
    } else if (!results.length && !partly.length) {
      said = "nothing found";
    }
    results = results.length ? results : partly;
    results.sort(order);
    if (results.length && results[0].partly) { said = said || "not every word was found"; }
    return { results: results.slice(0, MOST), all: results.length, note: said, near: near };
  }

  window.garboardFind = { ready: ready, find: find, quantities: quantities, key: key };

  // ---- the box ----

  var root = document.documentElement.getAttribute("data-root");
  var way = window.garboardWay || (root === null ? null : function (path, anchor) {
    return root + path + ".html" + (anchor ? "#" + anchor : "");
  });
  if (!way) {
    return;
  }
  var known = null, waiting = [];
  function load(then) {
    if (!known && window.garboardIndex) {
      known = ready(window.garboardIndex);
    }
    if (known) {
      then();
      return;
    }
    waiting.push(then);
    if (waiting.length > 1) {
      return;
    }
    var script = document.createElement("script");
    script.src = root + "assets/find-index.js";
    script.onload = function () {
      known = ready(window.garboardIndex);
      waiting.splice(0).forEach(function (one) { one(); });
    };
    script.onerror = function () {
      waiting.length = 0;
      document.querySelectorAll(".find .count").forEach(function (count) {
        count.textContent = "the list of what can be found is missing from this copy: use A to Z, or the contents";
      });
    };
    document.head.appendChild(script);
  }

  function line(parent, kind, text) {
    var made = document.createElement(kind);
    made.textContent = text;
    parent.appendChild(made);
    return made;
  }
  function add(list, result) {
    var entry = result.entry;
    var link = line(line(list, "li", ""), "a", "");
    link.href = way(entry.path, entry.anchor);
    line(link, "b", entry.title);
    line(link, "span", [entry.kind, entry.system].filter(Boolean).join(", ")).className = "kind";
    if (entry.review) {
      line(link, "span", entry.review).className = /^DO NOT USE/.test(entry.review) ? "state never" : "state";
    }
    if (entry.text) {
      line(link, "span", entry.text).className = "says";
    }
  }
  // Where to look when nothing was found: by what is seen or heard, by the panel, by name.
  var INSTEAD = ["registers/emergencies", "registers/alarms", "registers/symptoms", "registers/a-to-z"];
  function instead(list) {
    line(list, "li", "Try one word of it, or look here:");
    INSTEAD.forEach(function (path) {
      known.entries.forEach(function (entry) { if (entry.path === path && !entry.anchor) { add(list, { entry: entry }); } });
    });
  }
  function show(box, list, count) {
    var answer = find(known, box.value), question = box.value;
    list.textContent = "";
    list.classList.toggle("instead", !answer.all);
    count.textContent = "";
    if (!question.trim()) {
      return;
    }
    answer.results.slice(0, AT_ONCE).forEach(function (result) { add(list, result); });
    if (answer.results.length > AT_ONCE) {
      setTimeout(function () {
        if (box.value === question && list.childElementCount === AT_ONCE) {
          answer.results.slice(AT_ONCE).forEach(function (result) { add(list, result); });
        }
      }, 150);
    }
    var found = answer.all ? answer.all + " found" + (answer.all > MOST ? ", the first " + MOST + " shown" : "") : "";
    count.textContent = [answer.note, found].filter(Boolean).join("; ");
    if (answer.near) {
      count.appendChild(document.createTextNode("; nearest "));
      var link = line(count, "a", answer.near.name);
      link.href = way(answer.near.entry.path, answer.near.entry.anchor);
    }
    if (!answer.all) { instead(list); }
  }

  function open(part) {
    var box = part.querySelector("input");
    var list = part.querySelector(".found");
    var count = part.querySelector(".count");
    part.hidden = false;
    function ask() {
      load(function () { show(box, list, count); });
    }
    function warm() {
      load(function () { return undefined; });
    }
    box.addEventListener("focus", warm);
    if (document.activeElement === box) { // it had the focus before this script ran
      warm();
    }
    box.addEventListener("input", ask);
    part.addEventListener("keydown", function (event) {
      var links = Array.prototype.slice.call(list.querySelectorAll("a"));
      var at = links.indexOf(document.activeElement);
      if (event.key === "Enter" && event.target === box) {
        event.preventDefault();
        if (links[0] && !list.classList.contains("instead")) { links[0].click(); }
      } else if (event.key === "ArrowDown" && links[at + 1]) {
        event.preventDefault();
        links[at + 1].focus();
      } else if (event.key === "ArrowUp" && at >= 0) {
        event.preventDefault();
        (links[at - 1] || box).focus();
      } else if (event.key === "Escape" && box.value) {
        box.value = "";
        ask();
        box.focus();
      }
    });
    if (part.classList.contains("whole")) {
      var without = document.querySelector(".without");
      if (without) {
        without.hidden = true;
      }
      var asked = window.garboardWay ? "" : decodeURIComponent(location.hash.slice(1));
      if (asked) {
        box.value = asked;
        ask();
      }
    }
  }
  document.addEventListener("garboard:page", function (event) { // one more page of the one file
    event.target.querySelectorAll(".find").forEach(open);
  });
  document.querySelectorAll(".find").forEach(open);
})();
