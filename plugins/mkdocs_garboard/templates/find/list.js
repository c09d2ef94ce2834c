// The list of what can be found, made ready once: sorted names, postings of words, numbers by kind and size.

var IN_FULL = /^[a-z]{4}\d{3}$/;
var TITLE = 1, NAMES = 0.8, AROUND = 0.45, TEXT = 0.35;
// Beside their names these carry what else they are called; the others carry what they tell.
var OWN = { part: true, "spare part": true, word: true, pipe: true };
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

// Where a text begins with another, in a sorted list.
function starting(list, text, then) {
  var low = 0, high = list.length, middle;
  while (low < high) {
    middle = (low + high) >> 1;
    if (list[middle] < text) { low = middle + 1; } else { high = middle; }
  }
  for (; low < list.length && list[low].indexOf(text) === 0; low += 1) { then(list[low]); }
}
