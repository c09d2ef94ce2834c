// A question and its answer: names first, then numbers in any unit, then words.

var MOST = 30;
// What the square code on a card or a label holds: name, revision, digest.
var CARD = /(?:^|[\s/])([a-z]{2}-[a-z]{2}-\d{3})(?:\.html)?(?:\s+r(\S+))?[\s#]+([0-9a-f]{8,64})(?=\s|$)/i;

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
