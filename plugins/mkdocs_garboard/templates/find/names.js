// What is found by its name: a tag, an id, a title, a part number, a word of the crew.

// The form of a tag or id without its system.
var IN_PART = /^[a-z]{2}\d{1,3}$/;
// What is opened in a hurry comes first of what fits as well; the manual of the tool comes last.
var BONUS = {
  alarm: 60, fault: 60, procedure: 50, part: 25, hazard: 25, "spare part": 10, register: 20, place: 5,
  isolation: -60, value: -40, rule: -120, method: -60, manual: -40, "list of pages": -200,
  "plan line": -10, test: -10, "work package": -10, "open item": -10, "job sheet": -30, "quick card": -30, word: -200
};
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
