// Find: names first, then numbers in any unit, then words. A name or a number is never guessed; a
// word of five letters and more forgives one letter. The list of what can be found is a script too,
// loaded when the box is first entered, so that it works from a folder without any network.
(function () {
  "use strict";

  var MOST = 50;
  var NEAR_ENOUGH = 0.005;

  // ---- folding ----

  function plain(text) {
    return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase()
      .replace(/[\u2019\u2018'`]/g, "").replace(/\u00b3/g, "3").replace(/\u00b2/g, "2").replace(/[\u00a0\u202f]/g, " ");
  }
  function key(text) {
    return plain(text).replace(/[\s\-./_\u2010-\u2015]+/g, "");
  }
  function split(text) {
    return plain(text).split(/[^a-z0-9\u00df-\uffff]+/).filter(Boolean);
  }
  var NAME = /[a-z]{2}-[a-z]{2}-\d{3}/g;
  function names(text) {
    return (plain(text).match(NAME) || []).map(key);
  }

  // ---- numbers with units: one key whatever the unit ----

  var GALLON_US = 3.785411784e-3, GALLON_IMP = 4.54609e-3, POUND = 0.45359237, FOOT = 0.3048;
  var UNITS = {
    "pa": ["p", 1], "hpa": ["p", 100], "kpa": ["p", 1e3], "MPa": ["p", 1e6], "mpa": ["p", 1e6], "mbar": ["p", 100],
    "bar": ["p", 1e5], "psi": ["p", 6894.757], "psig": ["p", 6894.757, "g"], "psia": ["p", 6894.757, "a"],
    "barg": ["p", 1e5, "g"], "bara": ["p", 1e5, "a"], "atm": ["p", 101325], "kgf/cm2": ["p", 98066.5],
    "l": ["v", 1e-3], "litre": ["v", 1e-3], "litres": ["v", 1e-3], "liter": ["v", 1e-3], "liters": ["v", 1e-3],
    "ml": ["v", 1e-6], "m3": ["v", 1], "cm3": ["v", 1e-6], "ft3": ["v", FOOT * FOOT * FOOT],
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
  var QUANTITY = /(^|[^\w.,-])(-?\d+(?:[.,]\d+)?)\s*([a-z\u00b0%][a-z0-9\u00b0%_/.]*)(?:\s*\(\s*(g|a|d|n|s|anr)\s*\))?/gi;

  // Every number with a unit in a text, as {kind, reading, from, at}; from says what it is counted from.
  function quantities(text) {
    var found = [], match;
    var even = text.normalize("NFC").replace(/\u00b3/g, "3").replace(/\u00b2/g, "2").replace(/\^/g, "");
    QUANTITY.lastIndex = 0;
    while ((match = QUANTITY.exec(even))) {
      var name = match[3].replace(/\u00b0/g, "deg").replace(/[_.]/g, "");
      var unit = UNITS[name] || UNITS[name.toLowerCase()];
      QUANTITY.lastIndex = match.index + match[0].length;
      if (!unit) {
        continue;
      }
      var number = parseFloat(match[2].replace(",", "."));
      var factors = [].concat(unit[1]);
      factors.forEach(function (factor) {
        found.push({
          kind: unit[0], reading: (number - (unit[3] || 0)) * factor,
          from: (match[4] || unit[2] || "").toLowerCase(), text: match[0]
        });
      });
    }
    return found;
  }
  function same(one, other) {
    if (one.kind !== other.kind || (one.from && other.from && one.from !== other.from)) {
      return false;
    }
    var largest = Math.max(Math.abs(one.reading), Math.abs(other.reading));
    return Math.abs(one.reading - other.reading) <= NEAR_ENOUGH * largest + 1e-12;
  }

  // ---- the list, made ready once ----

  function folder(address) {
    return /^id\//.test(address) ? "" : address.replace(/\.html.*/, "");
  }

  function ready(index) {
    return index.map(function (record, place) {
      var keys = record[5];
      var said = [record[0], record[6], record[7]].join(" ");
      return {
        title: record[0], kind: record[1], system: record[2], address: record[3], review: record[4], text: record[7],
        place: place, raw: keys.concat(record[0]).map(function (name) { return name.toLowerCase(); }),
        keys: keys.map(key), names: keys, titled: key(record[0]),
        numbers: [].concat.apply([], keys.map(quantities)), mentioned: quantities(said),
        cited: names(said), fields: [
          [60, split(record[0])], [45, split(keys.join(" ") + " " + record[6])],
          [30, split(record[1] + " " + record[2])], [20, split(record[7] + " " + folder(record[3]))]
        ]
      };
    });
  }

  // ---- how far two words are apart, as far as it matters: nothing, one letter, more ----

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

  // The form of a tag or id, in full or without its system.
  var WHOLE = /^[a-z]{4}\d{3}$/, IN_PART = /^[a-z]{2}\d{1,3}$/;

  function byName(entry, folded, typed) {
    var best = 0;
    // A value is named after its calculation or part: it stands behind them, and a word alone is not its name.
    var value = entry.kind === "value", starts = value ? (/[\d.]/.test(typed) ? 750 : 0) : 800;
    entry.keys.forEach(function (name) {
      if (name === folded) {
        best = Math.max(best, 1000);
      } else if (folded.length > 1 && name.indexOf(folded) === 0) {
        best = Math.max(best, starts);
      } else if (IN_PART.test(folded) && WHOLE.test(name) && name.indexOf(folded) === 2) {
        best = Math.max(best, 780);
      }
    });
    if (entry.titled === folded) {
      best = Math.max(best, 900);
    }
    if (best && entry.raw.indexOf(typed) >= 0) {
      best += 50;
    }
    if (!best && entry.cited.indexOf(folded) >= 0) {
      best = 500;
    }
    return best;
  }
  function byNumber(entry, asked) {
    function has(list) {
      return list.some(function (one) {
        return asked.some(function (other) { return same(one, other); });
      });
    }
    return has(entry.numbers) ? 700 : has(entry.mentioned) ? 300 : 0;
  }
  function byWord(entry, word) {
    var best = 0, digits = /\d/.test(word);
    entry.fields.forEach(function (field) {
      field[1].forEach(function (known) {
        if (known === word) {
          best = Math.max(best, field[0]);
        } else if (word.length > 1 && known.indexOf(word) === 0) {
          best = Math.max(best, field[0] * 0.7);
        } else if (!digits && !/\d/.test(known) && word.length >= 5 && best < field[0] * 0.4 && apart(word, known, 1) === 1) {
          best = field[0] * 0.4;
        }
      });
    });
    if (!best && digits) {
      entry.keys.forEach(function (name) {
        if (name === key(word)) {
          best = 45;
        }
      });
    }
    return best;
  }

  function nearest(entries, folded) {
    var best = null;
    entries.forEach(function (entry) {
      entry.names.forEach(function (name) {
        if (entry.kind === "value" || !/\d/.test(name) || /\s/.test(name)) {
          return;
        }
        var one = { name: name, entry: entry, far: apart(folded, key(name), 3), alike: alike(folded, key(name)) };
        if (one.far < 4 && (!best || one.far < best.far || (one.far === best.far &&
            (one.alike > best.alike || (one.alike === best.alike && name < best.name))))) {
          best = one;
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

  function find(entries, question) {
    var typed = question.trim().toLowerCase();
    var folded = key(question);
    if (!folded) {
      return { results: [], all: 0, note: "" };
    }
    var asked = quantities(question);
    var rest = question;
    asked.forEach(function (quantity) { rest = rest.replace(quantity.text, " "); });
    var words = split(rest);
    var results = [], partly = [];
    if (WHOLE.test(folded) || (IN_PART.test(folded) && entries.some(function (entry) { return byName(entry, folded, typed); }))) {
      words = [];
    }
    entries.forEach(function (entry) {
      var score = byName(entry, folded, typed);
      var missing = 0, sum = 0;
      words.forEach(function (word) {
        var found = byWord(entry, word);
        sum += found;
        missing += found ? 0 : 1;
      });
      if (asked.length) {
        var number = byNumber(entry, asked);
        sum += number;
        missing += number ? 0 : 1;
      }
      if (entry.kind === "value") {
        sum *= 0.8;
      }
      if (score || (sum && !missing)) {
        results.push({ entry: entry, score: Math.max(score, Math.min(sum, 790)) });
      } else if (sum) {
        partly.push({ entry: entry, score: sum });
      }
    });
    var note = "";
    var near = null;
    // Has the form of a name, or the one word asked for holds a digit: then nothing like it is offered
    // as an answer, only as the nearest name there is.
    var single = !asked.length && /\d/.test(folded) && (words.length < 2 || /^[a-z]{4}[a-z0-9]{3}$/.test(folded) || /^[a-z]{2}[\s-]+[a-z]{2}[\s-]+\w+$/.test(typed));
    if (!results.length && single) {
      near = nearest(entries, folded);
      note = /[a-z]/.test(folded) ? "no such tag" : "no such number";
      partly = [];
    } else if (!results.length && asked.length && !words.length) {
      note = "no such number";
    } else if (!results.length && partly.length) {
      results = partly;
      note = "not every word was found";
    } else if (!results.length) {
      note = "nothing found";
    }
    results.sort(order);
    return { results: results.slice(0, MOST), all: results.length, note: note, near: near };
  }

  window.garboardFind = { ready: ready, find: find, quantities: quantities, key: key };

  // ---- the box ----

  var root = document.documentElement.getAttribute("data-root");
  if (root === null) {
    return;
  }
  var entries = null, waiting = [];
  function load(then) {
    if (entries) {
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
      entries = ready(window.garboardIndex);
      waiting.splice(0).forEach(function (one) { one(); });
    };
    document.head.appendChild(script);
  }

  function line(parent, kind, text) {
    var made = document.createElement(kind);
    made.textContent = text;
    parent.appendChild(made);
    return made;
  }
  function show(box, list, count) {
    var answer = find(entries, box.value);
    list.textContent = "";
    answer.results.forEach(function (result) {
      var entry = result.entry;
      var link = line(line(list, "li", ""), "a", "");
      link.href = root + entry.address;
      line(link, "b", entry.title);
      line(link, "span", [entry.kind, entry.system].filter(Boolean).join(", "));
      if (entry.review) {
        line(link, "span", entry.review).className = /^DO NOT USE/.test(entry.review) ? "state never" : "state";
      }
      if (entry.text) {
        line(link, "span", entry.text);
      }
    });
    count.textContent = "";
    if (!box.value.trim()) {
      return;
    }
    var found = answer.all ? answer.all + " found" + (answer.all > MOST ? ", the first " + MOST + " shown" : "") : "";
    count.textContent = [answer.note, found].filter(Boolean).join("; ");
    if (answer.near) {
      count.appendChild(document.createTextNode("; nearest "));
      var link = line(count, "a", answer.near.name);
      link.href = root + answer.near.entry.address;
    }
  }

  document.querySelectorAll(".find").forEach(function (part) {
    var box = part.querySelector("input");
    var list = part.querySelector(".found");
    var count = part.querySelector(".count");
    part.hidden = false;
    function ask() {
      load(function () { show(box, list, count); });
    }
    box.addEventListener("focus", function () { load(function () { return undefined; }); });
    box.addEventListener("input", ask);
    part.addEventListener("keydown", function (event) {
      var links = Array.prototype.slice.call(list.querySelectorAll("a"));
      var at = links.indexOf(document.activeElement);
      if (event.key === "ArrowDown" || (event.key === "Enter" && event.target === box)) {
        if (links[at + 1]) {
          event.preventDefault();
          links[at + 1].focus();
        }
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
      var asked = decodeURIComponent(location.hash.slice(1));
      if (asked) {
        box.value = asked;
        ask();
      }
    }
  });
})();
