// What is found by the words of a question, and the same question in other words.

// They count for little, and are no reason to say that a word was not found.
var ASKING = { up: 0.35, out: 0.35, down: 0.35, over: 0.35 };
("a an and any are as at be can could did do does for from get got had has have how i if in is it its just many me much my" +
  " of often on only or our please should so some someone somebody that the them then there they this to us was we were what when" +
  " where which who why will with would you your").split(" ").forEach(function (word) { ASKING[word] = 0.08; });
// Who writes one of these tells that something is wrong, and not what he wants to read about.
var TROUBLE = Object.create(null);
("cant dead didnt doesnt dont dying empty failed fails flat gone isnt keeps lost never no not nothing smell smells smoke stopped stuck too wont")
  .split(" ").forEach(function (word) { TROUBLE[word] = true; });
var MOST_WAYS = 6;
var NUMBER = 7, MOST_BY_WORD = 740, LEAST_PARTLY = 200;

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
